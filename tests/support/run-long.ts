import { execFileSync } from 'node:child_process'
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative } from 'node:path'
import { parseArgs } from 'node:util'
import { findBrowser } from '../../electron/loopback/find-browser.ts'
import { PROJECT_FOLDER } from './command-line.ts'
import { COUNTS_FILE, countsIn } from './counted.ts'
import { leftovers, lookBefore } from './leftovers.ts'
import { npm, type ScriptCall, type ScriptEnd } from './npm-script.ts'
import { REPORTS, type Run, runAppTests, runUnitTests } from './runners.ts'

// npm run test:long: what has a larger size (`sized`), many kills, the app in the whole browser and with late answers.
// `-- --minutes 20` runs what fits into so many minutes; `-- --write` puts the result into docs/long-run.md.

const MINUTE_MS = 60_000
const KILLS = 100
const RESULT = join(PROJECT_FOLDER, 'docs', 'long-run.md')

const { values: asked } = parseArgs({
  options: { minutes: { type: 'string' }, write: { type: 'boolean', default: false } },
})
const endsAt = Date.now() + Number(asked.minutes ?? 24 * 60) * MINUTE_MS

interface Part {
  readonly what: string
  run(call: ScriptCall): Promise<Pick<Run, 'end'> & Partial<Run>>
}

/** The test files that try more where there is time, or hold tests for the long run alone. */
function longFiles(): string[] {
  return readdirSync(join(PROJECT_FOLDER, 'tests'), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.test.ts'))
    .map((file) => join(PROJECT_FOLDER, 'tests', file))
    .filter((file) => /\/(sized|sheets-tried)\.ts'|tags: 'long'/.test(readFileSync(file, 'utf8')))
    .map((file) => relative(PROJECT_FOLDER, file))
}

const wholeBrowser = findBrowser()

const PARTS: readonly Part[] = [
  {
    what: 'tests of the app that npm test leaves out',
    run: (call) => runAppTests({ ...call, args: ['--grep', '@long'], environment: { LONG_TESTS: 'yes' } }),
  },
  {
    what: 'tests of the parts, many seeds and sizes',
    run: (call) => runUnitTests({ ...call, args: longFiles(), environment: { LONG_TESTS: 'yes' } }),
  },
  {
    what: `${KILLS} kills of the host`,
    run: async (call) => ({ end: await npm('test:kills', { ...call, args: [String(KILLS)] }) }),
  },
  ...(wholeBrowser === null
    ? []
    : [
        {
          what: 'tests of the app in a whole browser',
          run: (call: ScriptCall) =>
            runAppTests({
              ...call,
              environment: { LONG_TESTS: 'yes', COMMON_DRAWER_BROWSER: wholeBrowser },
            }),
        },
      ]),
  {
    what: 'tests of the app, every answer late by a random time',
    run: (call) => runAppTests({ ...call, environment: { ANSWERS_LATE_MS: 'random' } }),
  },
]

function git(...args: string[]): string {
  return execFileSync('git', args, { cwd: PROJECT_FOLDER, encoding: 'utf8' }).trim()
}

const ENDED: Readonly<Record<ScriptEnd, string>> = {
  passed: 'passed',
  failed: 'FAILED',
  'out of time': 'cut off by the time given',
}

async function main(): Promise<number> {
  rmSync(REPORTS, { recursive: true, force: true })
  mkdirSync(REPORTS, { recursive: true })
  const before = lookBefore(PROJECT_FOLDER)
  // Not among the reports: the runner of the app empties their folder.
  const counts = join(tmpdir(), `drawer-counts-${process.pid}.ndjson`)
  process.env['TMPDIR'] = before.temporary
  process.env[COUNTS_FILE] = counts
  const lines: string[] = []
  let [passed, failed] = [0, 0]
  for (const { what, run } of PARTS) {
    const limitMs = endsAt - Date.now()
    if (limitMs < MINUTE_MS) {
      lines.push(`| ${what} | not begun | | |`)
      continue
    }
    const begun = Date.now()
    mkdirSync(REPORTS, { recursive: true })
    const ended = await run({ limitMs })
    const minutes = ((Date.now() - begun) / MINUTE_MS).toFixed(1)
    lines.push(
      `| ${what} | ${ENDED[ended.end]} | ${ended.passed === undefined ? '' : `${ended.passed}, ${ended.failed}`} | ${minutes} min |`,
    )
    passed += ended.passed ?? 0
    failed += ended.failed ?? (ended.end === 'failed' ? 1 : 0)
  }
  const left = asked.minutes === undefined ? await leftovers(before, PROJECT_FOLDER) : []
  rmSync(before.temporary, { recursive: true, force: true })
  const result = [
    '# The last long run',
    '',
    `\`npm run test:long\` on ${new Date().toISOString().slice(0, 10)}, commit ${git('rev-parse', '--short', 'HEAD')}.`,
    '',
    '| Part | How it ended | Passed, failed | Time |',
    '|---|---|---|---|',
    ...lines,
    '',
    'Counted on the way:',
    '',
    ...countsIn(counts).map((line) => `- ${line}`),
    ...left.map((sentence) => `- Left behind: ${sentence}`),
    '',
  ].join('\n')
  rmSync(counts, { force: true })
  console.log(`\n${result}`)
  if (asked.write) writeFileSync(RESULT, result)
  console.log(`${passed} passed, ${failed + left.length} failed`)
  return failed + left.length > 0 ? 1 : 0
}

process.exitCode = await main()
