import { jStat } from 'jstat'
import { describe, expect, test } from 'vitest'
import { beliefFromTest, chanceOfFewerThan } from '../../db/domain/needs/outlook.ts'
import { breedingOf, POPULATION_GOALS, plantsFor } from '../../db/domain/needs/population-goal.ts'
import { regrowingsLeft, seedsToSow } from '../../db/domain/needs/sowing.ts'
import crops from '../../db/reference/crops.json' with { type: 'json' }

const figures = Object.fromEntries(
  crops.map((crop) => [
    crop.id,
    {
      matingSystem: crop.mating_system,
      plantsForSeed: crop.plants_for_viable_seed,
      plantsToMaintain: crop.plants_to_maintain_variety?.[0] ?? null,
      plantsToConserve: crop.plants_for_genetic_preservation,
    },
  ]),
)

describe('population sizes of the guides behind the crop table (the table itself names the source of each cell)', () => {
  /** Seen: a New Zealand seed savers' leaflet for bean, a maize breeding guide, two courses and a kale handout. */
  test.each([
    ['bean', 'maintenance', 10],
    ['tomato', 'maintenance', 12],
    ['tomato', 'conservation', 20],
    ['sweet-corn', 'quality', 10],
    ['sweet-corn', 'maintenance', 50],
    ['sweet-corn', 'conservation', 200],
    ['wheat', 'conservation', 80],
    ['cabbage', 'conservation', 100],
    ['kale', 'maintenance', 60],
    ['carrot', 'conservation', 200],
  ] as const)('%s at %s grade: %i plants', (cropId, grade, plants) => {
    const row = figures[cropId]
    expect(row && plantsFor(row, grade)).toBe(plants)
  })

  /** Seen in one guide: 20 plants of a selfer and 100 of an outcrosser keep a variety's traits. */
  test('without a figure: 20 selfers, 100 outcrossers', () => {
    const none = { plantsForSeed: null, plantsToMaintain: null, plantsToConserve: null }
    expect(plantsFor({ ...none, matingSystem: 'selfer' }, 'conservation')).toBe(20)
    expect(plantsFor({ ...none, matingSystem: 'outcrosser' }, 'conservation')).toBe(100)
  })

  test('a higher grade never asks for fewer plants, and no outcrosser is conserved in fewer than 25', () => {
    for (const row of Object.values(figures)) {
      const sizes = POPULATION_GOALS.map((grade) => plantsFor(row, grade))
      expect(sizes).toEqual(sizes.toSorted((a, b) => a - b))
      if (breedingOf(row.matingSystem) === 'outcrosser') expect(sizes[2]).toBeGreaterThanOrEqual(25)
    }
  })
})

describe('seeds to sow = plants / (germination x field survival), rounded up', () => {
  /** Seen: a popular article after Cornell. 75 % germination and three plants wanted: sow four. */
  test('three plants at 75 % take four seeds', () => {
    expect(seedsToSow(3, 0.75, 1)).toBe(4)
  })

  test('sixty plants of seed half alive at 0.8 emergence take 150, and dead seed takes any number', () => {
    expect(seedsToSow(60, 0.5, 0.8)).toBe(150)
    expect(seedsToSow(60, 0, 0.8)).toBeNull()
  })

  /** Three regeneration cycles: IBPGR handbook of 1985, chapter 10 (seen). */
  test('225 living seeds make three regrowings of 60 plants at 0.8 emergence, and 224 make two', () => {
    const policy = { regrowings: 3, plants: 60, emergence: 0.8 }
    expect([225, 224, 74].map((living) => regrowingsLeft(living, policy))).toEqual([3, 2, 0])
  })
})

/** The Beta distribution of a statistics library, jStat: an independent computation of the same tail. */
describe('the chance of too few living seeds', () => {
  test('many seeds after a test: the Beta posterior of that test', () => {
    const belief = beliefFromTest(17, 20)
    const outlook = { mean: 1e6 * belief.mean, deviation: 1e6 * belief.deviation, most: 1e6 }
    for (const part of [0.6, 0.75, 0.85, 0.95]) {
      expect(chanceOfFewerThan(1e6 * part, outlook)).toBeCloseTo(jStat.ibeta(part, 18, 4), 5)
    }
  })

  /** The beta-binomial tail, summed from its definition. */
  test('forty seeds after a test of twenty: within two hundredths of the beta-binomial tail', () => {
    const [a, b, n] = [18, 4, 40]
    const logBeta = (x: number, y: number) => jStat.gammaln(x) + jStat.gammaln(y) - jStat.gammaln(x + y)
    const mass = (k: number) =>
      Math.exp(logBeta(k + a, n - k + b) - logBeta(a, b) - logBeta(k + 1, n - k + 1)) / (n + 1)
    const belief = beliefFromTest(17, 20)
    const deviation = Math.sqrt((n * belief.deviation) ** 2 + n * belief.mean * (1 - belief.mean))
    for (const wanted of [24, 28, 32, 36]) {
      const exact = Array.from({ length: wanted }, (_, k) => mass(k)).reduce((sum, p) => sum + p, 0)
      const ours = chanceOfFewerThan(wanted, { mean: n * belief.mean, deviation, most: n })
      expect(Math.abs(ours - exact)).toBeLessThan(0.02)
    }
  })
})
