import fc from 'fast-check'
import { mean, sampleStandardDeviation } from 'simple-statistics'
import { describe, expect, test } from 'vitest'
import { milligrams } from '../../db/domain/amounts/mass.ts'
import {
  countFromMass,
  hundredSeedWeightFromGrams,
  judgeReplicates,
  LARGEST_COEFFICIENT_OF_VARIATION,
  weightStatistics,
} from '../../db/domain/weights/hundred-seed-weight.ts'
import crops from '../../db/reference/crops.json' with { type: 'json' }
import { aSample } from '../builders/domain-values.ts'

describe('statistics against a general-purpose statistics library (simple-statistics)', () => {
  /** Eight portions of one hundred seeds, the mass of each in milligrams. */
  const portions = fc.array(fc.integer({ min: 1_000, max: 500_000 }), { minLength: 2, maxLength: 16 })

  test('mean, standard deviation and coefficient of variation of portions of one hundred', () => {
    fc.assert(
      fc.property(portions, (masses) => {
        const ours = weightStatistics(masses.map((mass) => aSample(100, mass)))
        const micrograms = masses.map((mass) => mass * 1_000)
        const meanWeight = mean(micrograms)
        const spread = sampleStandardDeviation(micrograms)
        // Ours is kept to the whole microgram, so a part in two million is the closest it can be here.
        expect(Math.abs(ours.hundredSeedWeight - meanWeight)).toBeLessThanOrEqual(0.5)
        expect(ours.standardDeviation).toBeCloseTo(spread, 3)
        expect(ours.coefficientOfVariation).toBeCloseTo((100 * spread) / meanWeight, 3)
      }),
    )
  })
})

/**
 * ISTA, International Rules for Seed Testing, chapter 10 (weight determination), from memory: eight replicates of one
 * hundred seeds; variance = (n * sum of squares - square of sum) / (n * (n - 1)); the result stands when the
 * coefficient of variation does not exceed 4.0, or 6.0 for chaffy grass seed; thousand-seed weight is ten times the mean.
 */
describe('the replicate rule of the international seed testing rules (from memory)', () => {
  const masses = [2_431, 2_502, 2_466, 2_390, 2_547, 2_418, 2_489, 2_455]

  test("the rule's own variance formula gives our standard deviation", () => {
    const n = masses.length
    const sum = masses.reduce((total, x) => total + x, 0)
    const squares = masses.reduce((total, x) => total + x * x, 0)
    const variance = (n * squares - sum * sum) / (n * (n - 1))
    const ours = weightStatistics(masses.map((mass) => aSample(100, mass)))
    expect(ours.standardDeviation).toBeCloseTo(1_000 * Math.sqrt(variance), 6)
    expect(ours.hundredSeedWeight).toBe((1_000 * sum) / n)
  })

  test('the limits are 4.0 and 6.0 percent', () => {
    expect(LARGEST_COEFFICIENT_OF_VARIATION).toEqual({ ordinary: 4.0, chaffy: 6.0 })
  })

  test.each([
    ['within 4.0', 0.039, 'ordinary', 'agree'],
    ['beyond 4.0', 0.041, 'ordinary', 'weigh-again'],
    ['within 6.0, chaffy', 0.059, 'chaffy', 'agree'],
    ['beyond 6.0, chaffy', 0.061, 'chaffy', 'weigh-again'],
  ] as const)('eight replicates that vary %s', (_, variation, surface, judgement) => {
    // Four portions a and four b have a standard deviation of (b - a) / 2 x sqrt(8 / 7).
    const half = 100_000 * variation * Math.sqrt(7 / 8)
    const eight = [1, 1, 1, 1, -1, -1, -1, -1].map((sign) => aSample(100, Math.round(100_000 + sign * half)))
    const statistics = weightStatistics(eight)
    expect(statistics.coefficientOfVariation).toBeCloseTo(100 * variation, 2)
    expect(judgeReplicates(statistics, surface)).toBe(judgement)
  })
})

/**
 * 7 CFR 201.46, Table 1, approximate number of seeds per gram (US Federal Seed Act regulations, 2015 annual edition;
 * seen). Printed as whole numbers, so only counts of ten and more are compared, to the 1 % that three figures leave.
 */
test('a gram of seed is as many seeds as the federal table of seeds per gram says', () => {
  const federal = crops.filter(
    (crop) =>
      crop.sources.hundred_seed_weight_g?.source.startsWith('CFR46') &&
      typeof crop.seeds_per_gram_federal === 'number' &&
      crop.seeds_per_gram_federal >= 10,
  )
  expect(federal.length).toBeGreaterThan(25)
  for (const crop of federal) {
    const counted = countFromMass(
      milligrams(1_000),
      hundredSeedWeightFromGrams(crop.hundred_seed_weight_g ?? 0),
    )
    const printed = Number(crop.seeds_per_gram_federal)
    expect(Math.abs(counted - printed) / printed, crop.id).toBeLessThanOrEqual(0.01)
  }
})
