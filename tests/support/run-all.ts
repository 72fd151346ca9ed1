import { mkdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { makePatterns } from '../app/support/patterns.ts'
import { APP_TEST_MS, overBudget, slowest, UNIT_TEST_MS } from './budget.ts'
import { PROJECT_FOLDER } from './command-line.ts'
import { COUNTS_FILE, countsIn } from './counted.ts'
import { getTestBrowser } from './find-browser.ts'
import { leftovers, lookBefore } from './leftovers.ts'
import { npm } from './npm-script.ts'
import { REPORTS, type Run, runAppTests, runUnitTests } from './runners.ts'
import { watchSlowness } from './slowness.ts'
import { makeTemplatesFolder } from './templates.ts'

// npm test: the builds with the collections that tests copy beside them, the tests of the parts with the checks beside them, and the tests of the whole app in a
// browser. Every step runs whatever the one before said, then it is looked what they left behind; at the end stand the
// slowest tests and what the tests counted (kills survived, hostile inputs tried), and the last line is the sum of what
// the two runners counted.

const NO_BROWSER: Run = { passed: 0, failed: 1, times: [], end: 'failed' }

interface Timed {
  readonly run: Run
  readonly seconds: number
  readonly slowness: number
}

async function timed(run: () => Promise<Run>): Promise<Timed> {
  const begun = performance.now()
  const slowness = watchSlowness()
  const ended = await run()
  return { run: ended, seconds: Math.round((performance.now() - begun) / 1000), slowness: slowness() }
}

/** Says how a run went, with its slowest tests, and answers how many of them took too long. */
function tell(what: string, { run, seconds, slowness }: Timed, limitMs: number): number {
  console.log(
    `\n${what}: ${seconds} s, ${slowness.toFixed(1)} times slower than a quiet machine. The slowest:`,
  )
  for (const line of slowest(run.times)) console.log(`  ${line}`)
  const over = overBudget(run.times, limitMs, slowness)
  for (const sentence of over) console.error(`\nToo slow: ${sentence}`)
  return over.length
}

async function main(): Promise<number> {
  rmSync(REPORTS, { recursive: true, force: true })
  mkdirSync(REPORTS, { recursive: true })
  const before = lookBefore(PROJECT_FOLDER)
  // Not among the reports: the runner of the app empties their folder.
  const counts = join(tmpdir(), `drawer-counts-${process.pid}.ndjson`)
  process.env['TMPDIR'] = before.temporary
  process.env[COUNTS_FILE] = counts
  const removeTemplates = makeTemplatesFolder()
  const [built] = await Promise.all([npm('build'), makePatterns()])
  const [unit, checked] = await Promise.all([timed(runUnitTests), npm('check', { printAtEnd: true })])
  const browser = await getTestBrowser(PROJECT_FOLDER)
  if (browser === null) {
    console.error(
      'No browser could be found or fetched, so the tests of the app were not run and this test run fails. ' +
        'Install Chromium, Chrome or Edge, or name one in COMMON_DRAWER_BROWSER.',
    )
  }
  const app = await timed(async () => (browser === null ? NO_BROWSER : runAppTests()))
  if (checked !== 'passed') console.error('\nA check of types, style or layers failed: see above.')
  if (built !== 'passed') console.error('\nA build failed: see above.')
  const tooSlow = tell('Tests of the parts', unit, UNIT_TEST_MS) + tell('Tests of the app', app, APP_TEST_MS)
  removeTemplates()
  const left = await leftovers(before, PROJECT_FOLDER)
  for (const sentence of left) console.error(`\nLeft behind: ${sentence}`)
  const onTheWay = countsIn(counts)
  rmSync(counts, { force: true })
  if (onTheWay.length === 0)
    console.error('\nThe tests counted no kill and no hostile input: they were not run.')
  console.log(['\nCounted on the way', ...onTheWay].join('\n  '))
  const failed = unit.run.failed + app.run.failed + tooSlow + left.length + (onTheWay.length === 0 ? 1 : 0)
  console.log(`\n${unit.run.passed + app.run.passed} passed, ${failed} failed`)
  return checked === 'passed' && built === 'passed' && failed === 0 ? 0 : 1
}

process.exitCode = await main()
