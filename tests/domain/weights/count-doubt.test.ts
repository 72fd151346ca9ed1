import { jStat } from 'jstat'
import { describe, expect, test } from 'vitest'
import {
  hundredSeedWeightFromGrams,
  relativeDoubt,
  weightStatistics,
} from '../../../db/domain/weights/hundred-seed-weight.ts'
import { studentQuantile } from '../../../db/domain/weights/student.ts'
import { aSample } from '../../builders/domain-values.ts'
import { sized } from '../../support/sized.ts'

/** Samples drawn for each number of replicates, size and spread. */
const DRAWS = sized(1_000, 20_000)
const TRUE_GRAMS = 24

/** Numbers of a normal distribution from a seed of its own, so that a run can be repeated (Box and Muller 1958). */
function normals(seed: number): () => number {
  let state = seed
  const uniform = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return (state + 0.5) / 2 ** 32
  }
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
}

const doubtOf = (replicates: number, seedsCounted: number, coefficientOfVariation: number | null) =>
  relativeDoubt(
    'measured',
    hundredSeedWeightFromGrams(TRUE_GRAMS),
    { replicates, seedsCounted, coefficientOfVariation },
    null,
  )

/** How often the truth lies inside the doubt that is told of a count, and how often the least of that doubt decided it. */
function simulate(replicates: number, seedsInEach: number, spreadOfOne: number) {
  const draw = normals(1_000 * replicates + 10 * seedsInEach + Math.round(100 * spreadOfOne))
  const spread = spreadOfOne / Math.sqrt(seedsInEach)
  let held = 0
  let least = 0
  for (let run = 0; run < DRAWS; run += 1) {
    const samples = Array.from({ length: replicates }, () =>
      aSample(seedsInEach, Math.round(10 * seedsInEach * TRUE_GRAMS * (1 + spread * draw()))),
    )
    const { hundredSeedWeight, seedsCounted, coefficientOfVariation } = weightStatistics(samples)
    const doubt = doubtOf(replicates, seedsCounted, coefficientOfVariation)
    if (Math.abs(hundredSeedWeight / 1_000_000 / TRUE_GRAMS - 1) <= doubt) held += 1
    if (doubt <= doubtOf(1, seedsCounted, null)) least += 1
  }
  return { held: held / DRAWS, least: least / DRAWS }
}

describe('the doubt of a count through replicates', () => {
  const cases = [2, 3, 4, 6, 8].flatMap((replicates) =>
    [50, 100].flatMap((seeds) => [0.2, 0.4, 0.6, 1.2].map((spread) => [replicates, seeds, spread] as const)),
  )

  test.each(cases)('holds the truth with %s of %s seeds that differ by %s', (replicates, seeds, spread) => {
    const { held, least } = simulate(replicates, seeds, spread)
    expect(held).toBeGreaterThanOrEqual(0.93)
    if (held > 0.97) expect(least).toBeGreaterThan(0.05)
  })

  test('is never less than what one sample of as many seeds would leave, however well they agree', () => {
    expect(doubtOf(2, 10, 0)).toBeCloseTo(0.08 * Math.sqrt(10), 12)
    expect(doubtOf(2, 10, 0)).toBeCloseTo(doubtOf(1, 5, null) / Math.SQRT2, 12)
    expect(doubtOf(8, 800, 0)).toBeCloseTo(doubtOf(1, 100, null) / Math.sqrt(8), 12)
  })
})

describe('Student’s t', () => {
  // Student 1908 (Biometrika 6:1-25) gave the distribution; 97.5 % points as every table prints them, from memory.
  test.each([
    [1, 12.706],
    [2, 4.303],
    [3, 3.182],
    [4, 2.776],
    [7, 2.365],
    [30, 2.042],
  ])('with %s degrees of freedom is as printed: %s', (degrees, printed) => {
    expect(studentQuantile(degrees)).toBeCloseTo(printed, 3)
  })

  test('is that of a statistics library (jStat)', () => {
    for (let degrees = 1; degrees <= 49; degrees += 1)
      expect(studentQuantile(degrees)).toBeCloseTo(jStat.studentt.inv(0.975, degrees), 6)
  })

  test('wants a degree of freedom at least', () => {
    expect(() => studentQuantile(0)).toThrow(RangeError)
  })
})
