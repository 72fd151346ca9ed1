import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { test as base, expect } from '@playwright/test'
import { callOnFile } from './command-line.ts'
import { type RunningApp, startApp } from './running-app.ts'

interface Given {
  /** What is in the drawer when the test begins: the demonstration, or an empty collection of the keeper's own. */
  drawer: 'demo' | 'empty'
  /** The running app; its page is open on it. */
  app: RunningApp
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
    await fill(folder, drawer)
    const app = await startApp(folder)
    const wrong: string[] = []
    page.on('pageerror', (thrown) => wrong.push(thrown.message))
    page.on('console', (message) => {
      if (message.type() === 'error') wrong.push(message.text())
    })
    await page.goto(app.address)
    await use(app)
    expect(wrong, 'nothing went wrong in the page').toEqual([])
    expect(await app.call('collection.check', {}), 'the book is right').toMatchObject({ clean: true })
    expect(await app.end(), 'the app ends cleanly').toBe(0)
    rmSync(folder, { recursive: true, force: true })
  },
})

export { expect }

async function fill(folder: string, drawer: Given['drawer']): Promise<void> {
  const file = join(folder, 'Demo collection.drawer')
  if (drawer === 'empty') {
    await callOnFile(file, 'collection.start', {
      libraryName: 'Hollow Lane Library',
      accessionPattern: 'HL{yy}-{####}',
    })
    return
  }
  const demo = process.env['COMMON_DRAWER_TEST_DEMO']
  if (demo === undefined) throw new Error('The demonstration was not made before the tests')
  copyFileSync(demo, file)
}
