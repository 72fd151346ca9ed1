import { availableParallelism } from 'node:os'
import { defineConfig } from '@playwright/test'
import { findElectron } from './electron/loopback/find-electron.ts'
import { findTestBrowser } from './tests/support/find-browser.ts'
import { LONG_RUN } from './tests/support/sized.ts'

const browser = findTestBrowser()
const electron = findElectron(import.meta.dirname, process.env)

// Read by the runner and again by each of its workers: said once.
if (process.env['TEST_WORKER_INDEX'] === undefined) {
  if (browser === null) {
    throw new Error(
      'There is no browser on this machine. Name one in COMMON_DRAWER_BROWSER, or let npm test get one.',
    )
  }
  if (electron === null) {
    console.log("Electron's program is not on this machine, so its own window was not tested.")
  }
}

export default defineConfig({
  testDir: 'tests/app',
  globalSetup: './tests/app/support/before-all.ts',
  outputDir: 'test-results',
  forbidOnly: true,
  fullyParallel: true,
  workers: availableParallelism(),
  // For the long run: journeys beside the main ones, and the walk over every button, which takes an hour.
  ...(LONG_RUN ? {} : { grepInvert: /@long|@every-button/ }),
  // For a machine that is slow or busy: what is there is not waited for.
  timeout: 120_000,
  expect: { timeout: 20_000 },
  reporter: [['list']],
  use: {
    viewport: { width: 1280, height: 800 },
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    launchOptions: { ...(browser === null ? {} : { executablePath: browser }) },
  },
  projects: [
    { name: 'window', testIgnore: 'electron-window.spec.ts' },
    ...(electron === null ? [] : [{ name: 'electron', testMatch: 'electron-window.spec.ts' }]),
  ],
})
