import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { test as base, expect, type Page } from '@playwright/test'
import { type Pattern, patternOf } from './patterns.ts'
import { type RunningApp, startApp } from './running-app.ts'

interface Given {
  drawer: Pattern
  /** The running app; its page is open on it. */
  app: RunningApp
}

/** Milliseconds by which every answer comes late, to play the tests as on a slow machine. */
const LATE_MS = Number(process.env['ANSWERS_LATE_MS'] ?? 0)

/** Lets every answer of the app come late by a number of milliseconds. */
export async function answerLate(page: Page, lateMs: number): Promise<void> {
  await page.route('**/call', async (route) => {
    await new Promise((resolve) => setTimeout(resolve, lateMs))
    await route.continue()
  })
}

/**
 * A test with the app running in a folder of its own and its page open.
 *
 * Afterwards the book must be right, the app must end cleanly, and nothing may have gone wrong in the page: no script
 * failed, and nothing was refused by the content security policy.
 */
export const test = base.extend<Given>({
  drawer: ['demo', { option: true }],

  app: async ({ drawer, page }, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'drawer-app-'))
    copyFileSync(patternOf(drawer), join(folder, 'Demo collection.drawer'))
    const app = await startApp(folder)
    const wrong: string[] = []
    page.on('pageerror', (thrown) => wrong.push(thrown.message))
    page.on('console', (message) => {
      if (message.type() === 'error') wrong.push(message.text())
    })
    if (LATE_MS > 0) await answerLate(page, LATE_MS)
    await page.goto(app.address)
    await use(app)
    expect(wrong, 'nothing went wrong in the page').toEqual([])
    expect(await app.call('collection.check', {}), 'the book is right').toMatchObject({ clean: true })
    expect(await app.end(), 'the app ends cleanly').toBe(0)
    rmSync(folder, { recursive: true, force: true })
  },
})

export { expect }
