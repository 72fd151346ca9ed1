import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { chromium } from '@playwright/test'
import { findBrowser } from '../../electron/loopback/find-browser.ts'
import { isRoot } from '../../electron/loopback/open-window.ts'

const MINUTE_MS = 60_000

/** Chromium without its own window, as Debian packages it: the same engine for half the work. */
const SHELL = '/usr/bin/chromium-headless-shell'

/** The browser that the tests of the app drive: one that is here, or one that the test tool fetched before. */
export function findTestBrowser(): string | null {
  if (process.env['COMMON_DRAWER_BROWSER'] === undefined && existsSync(SHELL)) return SHELL
  const found = findBrowser()
  if (found !== null) return found
  const fetched = chromium.executablePath()
  return existsSync(fetched) ? fetched : null
}

/** Finds a browser, or gets one: Debian's package when root, else the test tool's own download. Null where none is had. */
export async function getTestBrowser(projectFolder: string): Promise<string | null> {
  const found = findTestBrowser()
  if (found !== null) return found
  if (isRoot() && existsSync('/usr/bin/apt-get')) {
    console.log("No browser is on this machine: installing Debian's Chromium for the tests.")
    const quiet = { DEBIAN_FRONTEND: 'noninteractive' }
    await run('apt-get', ['update', '-qq'], 3 * MINUTE_MS, projectFolder, quiet)
    await run(
      'apt-get',
      ['install', '-y', '-qq', '--no-install-recommends', 'chromium-headless-shell'],
      5 * MINUTE_MS,
      projectFolder,
      quiet,
    )
  }
  if (findTestBrowser() === null) {
    console.log('Fetching a browser for the tests.')
    await run(
      process.execPath,
      ['node_modules/playwright-core/cli.js', 'install', 'chromium'],
      4 * MINUTE_MS,
      projectFolder,
    )
  }
  return findTestBrowser()
}

/** Runs a program to its end or its time, whichever comes first; whether it worked shows in what it left. */
function run(
  program: string,
  args: readonly string[],
  limitMs: number,
  cwd: string,
  environment: NodeJS.ProcessEnv = {},
): Promise<void> {
  return new Promise((resolve) => {
    const child = spawn(program, args, {
      cwd,
      stdio: ['ignore', 'ignore', 'inherit'],
      timeout: limitMs,
      env: { ...process.env, ...environment },
    })
    child.once('error', () => resolve())
    child.once('exit', () => resolve())
  })
}
