import type { Page } from '@playwright/test'
import { demoFile } from '../../../electron/host/collections-folder.ts'
import { calmOf } from './calm.ts'
import { lookOver, type Names, namesIn } from './look-over.ts'
import { open } from './open.ts'
import type { RunningApp } from './running-app.ts'

const SETTLED_MS = 700

/** Buttons that open a form, or another part of a screen. */
const OPENING = 'main button:is([aria-expanded], .choice)'

/** Opens addresses one after the other and looks each over. What is wrong with them is gathered. */
export class LanguageWalk {
  readonly wrong: string[] = []
  looked = 0
  readonly #page: Page
  readonly #calm: () => Promise<void>
  readonly #names: Names

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

  /** Unfolds what is folded, then opens one after the other what buttons open, and looks each over. */
  async openAll(where: string): Promise<void> {
    await this.#page.evaluate(
      "for (const each of document.querySelectorAll('main details')) each.open = true",
    )
    await this.look(`${where}, unfolded`)
    for (const name of new Set(await this.#page.locator(OPENING).allTextContents())) {
      const button = this.#page.locator(OPENING).filter({ hasText: name }).first()
      if (!(await button.isVisible()) || name.trim() === '') continue
      await button.click()
      await this.look(`${where}, ${name}`)
      if ((await button.getAttribute('aria-expanded')) === 'true') await button.click()
      await this.#calm()
    }
  }

  async look(where: string): Promise<void> {
    await this.#calm()
    this.looked += 1
    let found = await lookOver(this.#page, this.#names)
    // The first look may come while a part of the page is still being told in its language.
    for (const until = Date.now() + SETTLED_MS; found.length > 0 && Date.now() < until; )
      found = await lookOver(this.#page, this.#names)
    this.wrong.push(...found.map((each) => `${where}: ${each}`))
  }
}
