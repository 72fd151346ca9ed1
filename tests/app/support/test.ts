import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { test as base, expect, type Page } from '@playwright/test'
import Database from 'better-sqlite3'
import { demoFile } from '../../../electron/host/collections-folder.ts'
import { type Pattern, patternOf } from './patterns.ts'
import { type HostProcess, type RunningApp, startHostProcess } from './running-app.ts'

interface Given {
  drawer: Pattern
  /** What the collection speaks; the made-up languages are chosen here and nowhere else. */
  language: string
  /** The running app; its page is open on it. */
  app: RunningApp
}

interface GivenToWorker {
  hostProcess: HostProcess
}

/** Milliseconds by which every answer comes late, or 'random', to play the tests as on a slow machine. */
const LATE_MS = process.env['ANSWERS_LATE_MS'] ?? '0'
const MOST_LATE_MS = 400
/** How many times slower the page's thread is made. */
const CPU_SLOWER = Number(process.env['CPU_SLOWER'] ?? 1)

/** Lets the answers of the app come late, each by a number of milliseconds. */
export async function answerLate(page: Page, lateMs: (operation: string) => number): Promise<void> {
  await page.route('**/call', async (route) => {
    const { operation } = route.request().postDataJSON() as { operation: string }
    await setTimeout(lateMs(operation))
    await route.continue()
  })
}

/** Makes a page as slow as was asked for from outside. */
async function slowDown(page: Page): Promise<void> {
  if (LATE_MS === 'random') await answerLate(page, () => Math.random() * MOST_LATE_MS)
  else if (Number(LATE_MS) > 0) await answerLate(page, () => Number(LATE_MS))
  if (CPU_SLOWER === 1) return
  const devTools = await page.context().newCDPSession(page)
  await devTools.send('Emulation.setCPUThrottlingRate', { rate: CPU_SLOWER })
}

/** Lets a collection speak a language, as no keeper can choose the made-up ones. */
function speak(file: string, language: string): void {
  const book = new Database(file)
  book.prepare('UPDATE collection SET language = ?').run(language)
  book.close()
}

/**
 * A test with the app running in a folder of its own and its page open.
 *
 * Afterwards the book must be right, the app must end cleanly, and nothing may have gone wrong in the page: no script
 * failed, and nothing was refused by the content security policy.
 */
export const test = base.extend<Given, GivenToWorker>({
  drawer: ['demo', { option: true }],
  language: ['en', { option: true }],

  hostProcess: [
    // biome-ignore lint/correctness/noEmptyPattern: the runner reads from the pattern which fixtures are wanted.
    async ({}, use) => {
      const hostProcess = startHostProcess()
      await use(hostProcess)
      await hostProcess.stop()
    },
    { scope: 'worker' },
  ],

  app: [
    async ({ drawer, language, page, hostProcess }, use) => {
      const folder = mkdtempSync(join(tmpdir(), 'drawer-app-'))
      copyFileSync(await patternOf(drawer), demoFile(folder))
      if (language !== 'en') speak(demoFile(folder), language)
      const app = await hostProcess.serve(folder)
      const wrong: string[] = []
      page.on('pageerror', (thrown) => wrong.push(thrown.message))
      page.on('console', (message) => {
        if (message.type() === 'error') wrong.push(message.text())
      })
      await slowDown(page)
      await page.goto(app.address)
      await use(app)
      expect(wrong, 'nothing went wrong in the page').toEqual([])
      expect(await app.call('collection.check', {}), 'the book is right').toMatchObject({ clean: true })
      expect(await app.end(), 'the app ends cleanly').toBe(0)
      // A backup that was given up may still take its unfinished file away.
      rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
    },
    // A test that asks for its page alone has the app as well.
    { auto: true },
  ],
})

export { expect }
