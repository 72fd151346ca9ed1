import { expect, test } from 'vitest'
import { overBudget, slowest } from './budget.ts'
import { watchSlowness } from './slowness.ts'

const times = [
  { name: 'quick', ms: 20 },
  { name: 'slow', ms: 2_100 },
  { name: 'slower', ms: 5_000 },
]

test('the slowest tests are told first, ten at most', () => {
  expect(slowest(times)).toEqual(['5.0 s  slower', '2.1 s  slow', '0.0 s  quick'])
  expect(slowest(Array.from({ length: 30 }, (_, ms) => ({ name: 'a test', ms })))).toHaveLength(10)
})

test('a test may take its limit, and as much more as the machine is slower than a quiet one', () => {
  expect(overBudget(times, 2_000, 1).map((sentence) => sentence.split(' took')[0])).toEqual([
    'slow',
    'slower',
  ])
  expect(overBudget(times, 2_000, 2)).toEqual([
    expect.stringMatching(/^slower took 5\.0 s, on a machine 2\.0 times slower/),
  ])
  expect(overBudget(times, 2_000, 2.5)).toEqual([])
})

test('a machine is never called quicker than the quiet one, and as slow as its slower quarter', () => {
  expect(watchSlowness(() => 1)()).toBe(1)
  expect(watchSlowness(() => 32)()).toBeGreaterThan(watchSlowness(() => 16)())
})
