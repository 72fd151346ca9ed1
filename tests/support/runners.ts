import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { PROJECT_FOLDER } from './command-line.ts'
import { npm, type ScriptCall, type ScriptEnd } from './npm-script.ts'

export const REPORTS = join(PROJECT_FOLDER, 'test-results', 'reports')

/** A test and the milliseconds it took. */
export interface TestTime {
  readonly name: string
  readonly ms: number
}

/** What a runner counted, and how it ended. */
export interface Run {
  readonly passed: number
  readonly failed: number
  readonly times: readonly TestTime[]
  readonly end: ScriptEnd
}

type Read = Pick<Run, 'passed' | 'failed' | 'times'>

/** The tests of the parts, all of them or those of some files. */
export async function runUnitTests(call: ScriptCall = {}): Promise<Run> {
  const report = join(REPORTS, 'vitest.json')
  const asked = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`]
  const end = await npm('test:unit', { ...call, args: [...asked, ...(call.args ?? [])] })
  return runOf(end, report, ofVitest)
}

/** The tests of the whole app in a browser. */
export async function runAppTests(call: ScriptCall = {}): Promise<Run> {
  const report = join(REPORTS, 'playwright.json')
  const end = await npm('test:app', {
    ...call,
    args: ['--reporter=list,json', ...(call.args ?? [])],
    environment: { ...call.environment, PLAYWRIGHT_JSON_OUTPUT_NAME: report },
  })
  return runOf(end, report, ofPlaywright)
}

/** A runner that ended badly counts one failure at least, and so does one that left no report. */
function runOf(end: ScriptEnd, report: string, read: (report: never) => Read): Run {
  let found: Read
  try {
    found = read(JSON.parse(readFileSync(report, 'utf8')) as never)
  } catch {
    return { passed: 0, failed: end === 'out of time' ? 0 : 1, times: [], end }
  }
  return { ...found, failed: end === 'failed' ? Math.max(1, found.failed) : found.failed, end }
}

interface VitestReport {
  readonly numPassedTests: number
  readonly numFailedTests: number
  readonly testResults: readonly {
    readonly name: string
    readonly assertionResults: readonly { readonly fullName: string; readonly duration?: number | null }[]
  }[]
}

function ofVitest({ numPassedTests, numFailedTests, testResults }: VitestReport): Read {
  const times = testResults.flatMap(({ name, assertionResults }) =>
    assertionResults.map(({ fullName, duration }) => ({
      name: `${name.replace(/^.*[/\\]tests[/\\]/, '')} › ${fullName}`,
      ms: duration ?? 0,
    })),
  )
  return { passed: numPassedTests, failed: numFailedTests, times }
}

interface PlaywrightSuite {
  readonly suites?: readonly PlaywrightSuite[]
  readonly specs?: readonly {
    readonly file: string
    readonly title: string
    readonly tests: readonly { readonly results: readonly { readonly duration: number }[] }[]
  }[]
}

interface PlaywrightReport extends PlaywrightSuite {
  readonly stats: { readonly expected: number; readonly unexpected: number; readonly flaky: number }
}

function ofPlaywright(report: PlaywrightReport): Read {
  const { expected, unexpected, flaky } = report.stats
  return { passed: expected, failed: unexpected + flaky, times: timesIn(report) }
}

function timesIn({ suites = [], specs = [] }: PlaywrightSuite): TestTime[] {
  const own = specs.flatMap(({ file, title, tests }) =>
    tests.flatMap(({ results }) =>
      results.map(({ duration }) => ({ name: `${file} › ${title}`, ms: duration })),
    ),
  )
  return [...own, ...suites.flatMap(timesIn)]
}
