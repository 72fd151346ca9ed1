import { spawn } from 'node:child_process'
import { mkdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { COUNTS_FILE, countsIn } from './counted.ts'
import { getTestBrowser } from './find-browser.ts'
import { leftovers, lookBefore } from './leftovers.ts'

// npm test: the checks, the tests of the parts, the builds, and the tests of the whole app in a browser. Every step
// runs whatever the one before said, then it is looked what they left behind; at the end stands what the tests counted
// (kills survived, hostile inputs tried), and the last line is the sum of what the two runners counted.

const PROJECT_FOLDER = fileURLToPath(new URL('../../', import.meta.url))
const REPORTS = join(PROJECT_FOLDER, 'test-results', 'reports')

interface Count {
  readonly passed: number
  readonly failed: number
}

/** Runs an npm script, as a person would, and answers whether it ended well. */
function npm(
  script: string,
  args: readonly string[] = [],
  environment: NodeJS.ProcessEnv = {},
): Promise<boolean> {
  const program = process.env['npm_execpath']
  if (program === undefined) throw new Error('Run the tests by npm test.')
  console.log(`\n— npm run ${script}`)
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [program, 'run', '--silent', script, '--', ...args], {
      cwd: PROJECT_FOLDER,
      stdio: 'inherit',
      env: { ...process.env, ...environment },
    })
    child.once('error', () => resolve(false))
    child.once('exit', (code) => resolve(code === 0))
  })
}

async function runUnitTests(): Promise<Count> {
  const report = join(REPORTS, 'vitest.json')
  const ended = await npm('test:unit', [
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ])
  return counted(ended, report, (read) => ({
    passed: Number(read['numPassedTests']),
    failed: Number(read['numFailedTests']),
  }))
}

async function runAppTests(): Promise<Count> {
  const report = join(REPORTS, 'playwright.json')
  const ended = await npm('test:app', ['--reporter=list,json'], { PLAYWRIGHT_JSON_OUTPUT_NAME: report })
  return counted(ended, report, (read) => {
    const stats = read['stats'] as Record<string, number>
    return { passed: Number(stats['expected']), failed: Number(stats['unexpected']) + Number(stats['flaky']) }
  })
}

/** A runner's own count; a runner that ended badly counts one failure at least, and so does one that left no report. */
function counted(ended: boolean, report: string, count: (read: Record<string, unknown>) => Count): Count {
  let found: Count
  try {
    found = count(JSON.parse(readFileSync(report, 'utf8')) as Record<string, unknown>)
  } catch {
    return { passed: 0, failed: 1 }
  }
  return ended ? found : { ...found, failed: Math.max(1, found.failed) }
}

async function main(): Promise<number> {
  rmSync(REPORTS, { recursive: true, force: true })
  mkdirSync(REPORTS, { recursive: true })
  const before = lookBefore(PROJECT_FOLDER)
  process.env['TMPDIR'] = before.temporary
  const counts = join(REPORTS, 'counts.ndjson')
  process.env[COUNTS_FILE] = counts
  const checked = await npm('check')
  const unit = await runUnitTests()
  // Read before the tests of the app: their runner empties the folder.
  const onTheWay = countsIn(counts)
  const built = await npm('build')
  const browser = await getTestBrowser(PROJECT_FOLDER)
  if (browser === null) {
    console.error(
      'No browser could be found or fetched, so the tests of the app were not run and this test run fails. ' +
        'Install Chromium, Chrome or Edge, or name one in COMMON_DRAWER_BROWSER.',
    )
  }
  const app = browser === null ? { passed: 0, failed: 1 } : await runAppTests()
  if (!checked) console.error('\nA check of types, style or layers failed: see above.')
  if (!built) console.error('\nA build failed: see above.')
  const left = await leftovers(before, PROJECT_FOLDER)
  for (const sentence of left) console.error(`\nLeft behind: ${sentence}`)
  if (onTheWay.length === 0)
    console.error('\nThe tests counted no kill and no hostile input: they were not run.')
  console.log(['\nCounted on the way', ...onTheWay].join('\n  '))
  const failed = unit.failed + app.failed + left.length + (onTheWay.length === 0 ? 1 : 0)
  console.log(`\n${unit.passed + app.passed} passed, ${failed} failed`)
  return checked && built && failed === 0 ? 0 : 1
}

process.exitCode = await main()
