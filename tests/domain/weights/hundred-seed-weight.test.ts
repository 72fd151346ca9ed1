import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { milligrams } from '../../../db/domain/amounts/mass.ts'
import { seedCount } from '../../../db/domain/amounts/seed-count.ts'
import {
  countFromMass,
  gramsPerHundred,
  hundredSeedWeight,
  hundredSeedWeightFromGrams,
  judgeReplicates,
  looksMisweighed,
  massFromCount,
  relativeDoubt,
  weightStatistics,
} from '../../../db/domain/weights/hundred-seed-weight.ts'
import { anyMass, anyWeight, aSample } from '../../builders/domain-values.ts'

const BEAN = hundredSeedWeightFromGrams(24.4)

test.each([0, -1, 0.5, Number.NaN, Number.POSITIVE_INFINITY])('%s is no hundred-seed weight', (value) => {
  expect(() => hundredSeedWeight(value)).toThrow(RangeError)
})

test('grams and micrograms are the same weight', () => {
  expect(BEAN).toBe(24_400_000)
  expect(gramsPerHundred(BEAN)).toBe(24.4)
  expect(hundredSeedWeightFromGrams(0.07)).toBe(70_000)
  expect(hundredSeedWeightFromGrams(0.070_000_6)).toBe(70_001)
  expect(hundredSeedWeightFromGrams(0.000_001)).toBe(1)
  expect(() => hundredSeedWeightFromGrams(0.000_000_4)).toThrow(RangeError)
})

describe('statistics of weighed samples', () => {
  test('one sample gives a weight and no spread: 25 seeds of 6.10 g are 24.4 g a hundred', () => {
    expect(weightStatistics([aSample(25, 6_100)])).toEqual({
      hundredSeedWeight: BEAN,
      replicates: 1,
      seedsCounted: 25,
      standardDeviation: null,
      coefficientOfVariation: null,
    })
  })

  test('replicates give mean, standard deviation over n - 1 and coefficient of variation', () => {
    const statistics = weightStatistics([aSample(100, 2_400), aSample(100, 2_500), aSample(100, 2_600)])
    expect(statistics.hundredSeedWeight).toBe(2_500_000)
    expect(statistics.standardDeviation).toBeCloseTo(100_000, 6)
    expect(statistics.coefficientOfVariation).toBeCloseTo(4, 10)
    expect(statistics.seedsCounted).toBe(300)
  })

  test('a milligram is enough for a sample', () => {
    expect(weightStatistics([aSample(2, 1)]).hundredSeedWeight).toBe(50_000)
  })

  test('portions of unequal size count every seed once', () => {
    const statistics = weightStatistics([aSample(100, 2_500), aSample(300, 9_000)])
    expect(statistics.hundredSeedWeight).toBe(2_875_000)
    expect(statistics.replicates).toBe(2)
  })

  test.each([[[]], [[aSample(0, 10)]], [[aSample(10, 0)]], [[aSample(10, 10), aSample(0, 10)]]])(
    'samples without seeds or mass are refused: %j',
    (samples) => {
      expect(() => weightStatistics(samples)).toThrow(RangeError)
    },
  )
})

describe('whether replicates agree', () => {
  const judged = (coefficientOfVariation: number | null, seedsInEach: number, replicates = 8) => ({
    hundredSeedWeight: BEAN,
    replicates,
    seedsCounted: seedCount(seedsInEach * replicates),
    standardDeviation: null,
    coefficientOfVariation,
  })

  test.each([
    [4.0, 100, 'ordinary', 'agree'],
    [4.01, 100, 'ordinary', 'weigh-again'],
    [5.9, 100, 'chaffy', 'agree'],
    [6.01, 100, 'chaffy', 'weigh-again'],
    [7.9, 25, 'ordinary', 'agree'],
    [8.1, 25, 'ordinary', 'weigh-again'],
    [4.0, 400, 'ordinary', 'agree'],
    [4.01, 400, 'ordinary', 'weigh-again'],
  ] as const)('%s %% over portions of %s, %s: %s', (variation, seedsInEach, surface, judgement) => {
    expect(judgeReplicates(judged(variation, seedsInEach), surface)).toBe(judgement)
  })

  test('a single sample is not judged', () => {
    expect(judgeReplicates(judged(null, 25, 1), 'ordinary')).toBe('not-judged')
  })
})

test('a weight looks misweighed only outside the plausible band of its crop', () => {
  const band = [15, 80] as const
  expect(looksMisweighed(hundredSeedWeightFromGrams(15), band)).toBe(false)
  expect(looksMisweighed(hundredSeedWeightFromGrams(80), band)).toBe(false)
  expect(looksMisweighed(hundredSeedWeightFromGrams(14.99), band)).toBe(true)
  expect(looksMisweighed(hundredSeedWeightFromGrams(80.01), band)).toBe(true)
  expect(looksMisweighed(hundredSeedWeightFromGrams(2.44), band)).toBe(true)
  expect(looksMisweighed(BEAN, null)).toBe(false)
})

describe('count and mass through a weight', () => {
  test.each([
    [6_100, 25],
    [121, 0],
    [122, 1],
    [0, 0],
  ])('%s mg of beans are %s', (mg, seeds) => {
    expect(countFromMass(milligrams(mg), BEAN)).toBe(seeds)
  })

  test.each([
    [25, 6_100],
    [1, 244],
    [0, 0],
  ])('%s beans weigh %s mg', (seeds, mg) => {
    expect(massFromCount(seedCount(seeds), BEAN)).toBe(mg)
  })

  test('where a seed weighs more than a milligram, a count survives the way through mass', () => {
    const heavy = fc.integer({ min: 100_001, max: 300_000_000 }).map(hundredSeedWeight)
    fc.assert(
      fc.property(fc.nat(1_000_000), heavy, (count, weight) => {
        expect(countFromMass(massFromCount(seedCount(count), weight), weight)).toBe(count)
      }),
    )
  })

  test('a derived number is never off by more than half of its unit', () => {
    fc.assert(
      fc.property(anyMass, anyWeight, (mass, weight) => {
        const seeds = (mass * 100_000) / weight
        expect(Math.abs(countFromMass(mass, weight) - seeds)).toBeLessThanOrEqual(0.5)
      }),
    )
  })
})

describe('the doubt of a derived number', () => {
  const replicates = (variation: number | null, count: number, seeds: number) => ({
    replicates: count,
    seedsCounted: seeds,
    coefficientOfVariation: variation,
  })

  test('eight replicates: Student’s t, 2.3646, times the standard error of their mean', () => {
    expect(relativeDoubt('measured', BEAN, replicates(4, 8, 800), null)).toBeCloseTo(0.0334408369, 9)
  })

  test('one sample: the limit for replicates, scaled to the seeds that were counted', () => {
    expect(relativeDoubt('measured', BEAN, replicates(null, 1, 100), null)).toBeCloseTo(0.08, 12)
    expect(relativeDoubt('measured', BEAN, replicates(null, 1, 25), null)).toBeCloseTo(0.16, 12)
    expect(relativeDoubt('measured', BEAN, replicates(null, 1, 400), null)).toBeCloseTo(0.04, 12)
    expect(relativeDoubt('measured', BEAN, replicates(2, 1, 100), null)).toBeCloseTo(0.08, 12)
    expect(relativeDoubt('measured', BEAN, replicates(null, 4, 400), null)).toBeCloseTo(0.04, 12)
  })

  test('two weighings that happen to be equal leave as much doubt as one of all their seeds', () => {
    expect(relativeDoubt('measured', BEAN, replicates(0, 2, 200), null)).toBeCloseTo(0.08 / Math.SQRT2, 12)
    expect(relativeDoubt('measured', BEAN, replicates(0, 50, 500_000), null)).toBe(0.01)
  })

  test("the crop's typical weight: half its plausible band, or one half where there is none", () => {
    const nothing = replicates(null, 0, 0)
    expect(relativeDoubt('crop-default', BEAN, nothing, [20, 30])).toBeCloseTo(5 / 24.4, 12)
    expect(relativeDoubt('crop-default', BEAN, nothing, [15, 80])).toBe(0.9)
    expect(relativeDoubt('crop-default', BEAN, nothing, null)).toBe(0.5)
  })

  test('a single seed weighed leaves nearly everything open', () => {
    expect(relativeDoubt('measured', BEAN, replicates(null, 1, 1), null)).toBeCloseTo(0.8, 12)
  })
})
