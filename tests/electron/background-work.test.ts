import { afterEach, expect, test } from 'vitest'
import type { UntoldProblem } from '../../db/contract/problem.ts'
import { Refusal } from '../../db/contract/refusal.ts'
import type { Runner } from '../../electron/host/answer-call.ts'
import { BackgroundWork } from '../../electron/host/background-work.ts'
import { IdleGate } from '../../electron/host/idle-gate.ts'
import { refreshForecasts } from '../../electron/host/served-collection.ts'

const logged: string[] = []
afterEach(() => {
  logged.length = 0
})
const log = (line: string) => void logged.push(line)

function runnerWith(left: number[], asked: { count: number }): Pick<Runner, 'run'> {
  return {
    async run() {
      asked.count += 1
      return { computed: 100, left: left.shift() ?? 0, held: false }
    },
  }
}

const refresherOf = (runner: Pick<Runner, 'run'>) =>
  new BackgroundWork('forecast.refresh', () => refreshForecasts(runner), new IdleGate(), log)

/** Lets the refresher go on until it has nothing to do. */
async function until(done: () => boolean): Promise<void> {
  while (!done()) await new Promise((resolve) => setTimeout(resolve, 1))
}

test('works portion by portion until nothing is left, and again when woken later', async () => {
  const asked = { count: 0 }
  const left = [200, 100, 0, 50, 0]
  const refresher = refresherOf(runnerWith(left, asked))
  refresher.wake()
  await until(() => asked.count === 3)
  refresher.wake()
  await until(() => asked.count === 5)
  await refresher.stop()
  refresher.wake()
  expect(asked.count).toBe(5)
})

test('stops after the portion at hand', async () => {
  const asked = { count: 0 }
  const refresher = refresherOf(runnerWith([300, 200, 100, 0], asked))
  refresher.wake()
  await until(() => asked.count === 1)
  await refresher.stop()
  expect(asked.count).toBeLessThan(4)
})

test('asks no further while it is held, and goes on when woken after', async () => {
  const answers = [
    { left: 200, held: false },
    { left: 100, held: true },
    { left: 50, held: false },
    { left: 0, held: false },
  ]
  const asked = { count: 0 }
  const runner: Pick<Runner, 'run'> = {
    async run() {
      asked.count += 1
      return { computed: 0, ...(answers.shift() ?? { left: 0, held: false }) }
    },
  }
  const refresher = refresherOf(runner)
  refresher.wake()
  await until(() => asked.count === 2)
  await new Promise((resolve) => setTimeout(resolve, 30))
  expect(asked.count).toBe(2)
  refresher.wake()
  await until(() => asked.count === 4)
  await refresher.stop()
})

test('a collection that cannot be written is left alone without a word; what is not previewed goes to the log', async () => {
  const problem: UntoldProblem = {
    code: 'collection-read-only',
    sentence: 'It is open for reading only.',
    field: null,
    todo: null,
    choices: [],
  }
  const refused = refresherOf({
    run: async () => {
      throw new Refusal(problem)
    },
  })
  refused.wake()
  await new Promise((resolve) => setTimeout(resolve, 30))
  await refused.stop()
  expect(logged).toEqual([])
  const broken = refresherOf({
    run: async () => {
      throw new Error('no such table')
    },
  })
  broken.wake()
  await until(() => logged.length > 0)
  await broken.stop()
  expect(logged[0]).toMatch(/^forecast.refresh /)
})

/** How long the background waits while `calling` says at which moments somebody still asks, milliseconds. */
async function waited(calling: (at: number) => boolean): Promise<number> {
  let at = 0
  const quiet: IdleGate = new IdleGate({
    now: () => at,
    after: async (milliseconds) => {
      at += milliseconds
      if (calling(at)) quiet.heard()
    },
  })
  if (calling(0)) quiet.heard()
  await quiet.wait()
  return at
}

test('the background lets whoever waits come first, and waits while one call follows the other, but not for ever', async () => {
  expect(await waited(() => false)).toBe(5)
  expect(await waited((at) => at === 0)).toBe(150)
  expect(await waited((at) => at <= 1_000)).toBe(1_150)
  expect(await waited(() => true)).toBe(2_000)
})
