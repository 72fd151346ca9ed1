import type { Page } from '@playwright/test'
import { demoFile } from '../../../electron/host/collections-folder.ts'
import { calmOf } from './calm.ts'
import { lookOver, namesIn } from './look-over.ts'
import { open } from './open.ts'
import type { RunningApp } from './running-app.ts'

/** Opens addresses one after the other and looks each over. What is wrong with them is gathered. */
export class LanguageWalk {
  readonly wrong: string[] = []
  readonly #page: Page
  readonly #calm: () => Promise<void>
  readonly #names: readonly RegExp[]

  constructor(page: Page, app: RunningApp, language: string) {
    this.#page = page
    this.#calm = calmOf(page)
    this.#names = namesIn(demoFile(app.folder), language)
  }

  async to(path: string): Promise<void> {
    await open(this.#page, path)
    await this.#page.locator('main :is(h1, h2)').first().waitFor({ state: 'attached' })
    await this.look(path)
  }

  async look(where: string): Promise<void> {
    await this.#calm()
    this.wrong.push(...(await lookOver(this.#page, this.#names)).map((each) => `${where}: ${each}`))
  }
}
