import { jStat } from 'jstat'
import { describe, expect, test } from 'vitest'
import { binomialChances } from '../../../db/domain/germination/binomial.ts'
import { LARGEST_TEST, PROBABLY, testOfSize, testSizes } from '../../../db/domain/germination/test-size.ts'
import {
  probabilityAtLeast,
  SURE,
  thresholdVerdict,
} from '../../../db/domain/germination/threshold-verdict.ts'

test('the probability of a threshold is the upper part of the Beta posterior', () => {
  for (const [sprouted, tested] of [
    [17, 20],
    [0, 10],
    [50, 50],
  ] as const)
    expect(probabilityAtLeast(0.75, sprouted, tested)).toBeCloseTo(
      1 - jStat.beta.cdf(0.75, sprouted + 1, tested - sprouted + 1),
      9,
    )
})

test('a probability is called sure from 97.5 % on, likely from 70 % on, and alike below', () => {
  const called = [1, 0.975, 0.9749, 0.7, 0.6999, 0.3001, 0.3, 0.0251, 0.0249, 0].map((probability) =>
    thresholdVerdict(probability, 20, null),
  )
  expect(called).toEqual([
    'above',
    'above',
    'likely-above',
    'likely-above',
    'open',
    'open',
    'likely-below',
    'likely-below',
    'below',
    'below',
  ])
})

test('seed of which none or all is alive leaves nothing to chance', () => {
  expect(binomialChances(3, 0)).toEqual([1, 0, 0, 0])
  expect(binomialChances(3, 1)).toEqual([0, 0, 0, 1])
})

describe('a test of some size', () => {
  test('decides from the fewest that make it sure, up to the most that do', () => {
    const { sureAboveFrom: above, sureBelowTo: below, decides } = testOfSize(50, 0.75, 0.9)
    const sure = (sprouted: number) => thresholdVerdict(probabilityAtLeast(0.75, sprouted, 50), 50, null)
    expect(above).toBeGreaterThan(38)
    expect([sure(above ?? 0), sure((above ?? 0) - 1)]).toEqual(['above', 'likely-above'])
    expect(below).toBeLessThan(37)
    expect([sure(below ?? 0), sure((below ?? 0) + 1)]).toEqual(['below', 'likely-below'])
    const chance = (from: number, to: number) =>
      Array.from({ length: to - from + 1 }, (_, index) => jStat.binomial.pdf(from + index, 50, 0.9)).reduce(
        (sum, part) => sum + part,
        0,
      )
    expect(decides).toBeCloseTo(chance(above ?? 0, 50) + chance(0, below ?? 0), 9)
  })

  test('has no number that would be enough where it is too small', () => {
    expect(testOfSize(2, 0.75, 0.9)).toMatchObject({ sureAboveFrom: null })
    expect(testOfSize(1, 0.5, 0.9)).toEqual({ seeds: 1, decides: 0, sureAboveFrom: null, sureBelowTo: null })
  })

  test('decides for sure where nothing of the seed is alive', () => {
    expect(testOfSize(20, 0.75, 0)).toMatchObject({ decides: 1 })
  })
})

describe('how many seeds to spend', () => {
  test('is the smallest test that decides four times in five', () => {
    const { smallest, shown } = testSizes(1_000, 0.75, 0.95)
    expect(smallest?.decides).toBeGreaterThanOrEqual(PROBABLY)
    expect(testOfSize((smallest?.seeds ?? 0) - 1, 0.75, 0.95).decides).toBeLessThan(PROBABLY)
    expect(shown.map(({ seeds }) => seeds)).toEqual([10, 20, 25, 40, 50, 100, 200, 400])
  })

  test('is never more than the lot holds or a laboratory takes', () => {
    expect(testSizes(25, 0.75, 0.8)).toMatchObject({ smallest: null })
    expect(testSizes(25, 0.75, 0.8).shown.map(({ seeds }) => seeds)).toEqual([10, 20, 25])
    const justEnough = testSizes(1_000, 0.75, 0.95).smallest?.seeds ?? 0
    expect(testSizes(justEnough, 0.75, 0.95).smallest?.seeds).toBe(justEnough)
    expect(testSizes(justEnough - 1, 0.75, 0.95).smallest).toBeNull()
    expect(LARGEST_TEST).toBe(400)
    expect(SURE).toBe(0.975)
  })
})
