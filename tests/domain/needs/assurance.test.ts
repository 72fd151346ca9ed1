import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { binomialChances } from '../../../db/domain/germination/binomial.ts'
import {
  chanceOfPlants,
  livingSeedsFor,
  type SownSeed,
  timesIn100,
} from '../../../db/domain/needs/assurance.ts'
import { sowingAdvice } from '../../../db/domain/needs/sowing.ts'
import { seedsToKeep } from '../../../db/domain/needs/what-to-keep.ts'
import { seeded } from '../../bench/random.ts'
import { sized } from '../../support/sized.ts'

const part = fc.double({ min: 0, max: 1, noNaN: true })
const lot = fc.record({
  seeds: fc.integer({ min: 1, max: 400 }),
  viability: part,
  deviation: fc.double({ min: 0, max: 0.3, noNaN: true }),
})
const emergences = fc.double({ min: 0.05, max: 1, noNaN: true })
const assurances = fc.double({ min: 0.5, max: 0.99, noNaN: true })

const sure = (seeds: number, viability: number): SownSeed[] => [{ seeds, viability, deviation: 0 }]

/** A draw from Beta(a, b) for whole a and b: the a-th smallest of a + b - 1 even ones (order statistics). */
function drawBeta(a: number, b: number, random: () => number): number {
  return Array.from({ length: a + b - 1 }, random).toSorted((x, y) => x - y)[a - 1] ?? 0
}

describe('the chance of so many plants', () => {
  test('is the binomial where nothing is in doubt', () => {
    for (const [seeds, of, plants] of [
      [70, 0.72, 50],
      [12, 0.5, 3],
      [400, 0.9, 350],
    ] as const) {
      const exact = binomialChances(seeds, of)
        .slice(plants)
        .reduce((sum, chance) => sum + chance, 0)
      expect(chanceOfPlants(plants, sure(seeds, of), 1)).toBeCloseTo(exact, 4)
    }
  })

  /** Tables of the binomial distribution: 70 trials of 0.72 reach 50 a little more often than not. */
  test('of a bare mean is little more than even: 70 seeds of 0.72 for 50 plants', () => {
    expect(chanceOfPlants(50, sure(70, 0.72), 1)).toBeCloseTo(0.6, 1)
  })

  test('is met by simulation, with viability and emergence in doubt', () => {
    const random = seeded(20_261_130)
    const runs = sized(3_000, 100_000)
    // 36 of 40 sprouted, as Beta(37, 5); emergence of Beta(51, 13) has the mean 0.797 and the usual doubt.
    const [a, b] = [37, 5]
    const mean = a / (a + b)
    const deviation = Math.sqrt((mean * (1 - mean)) / (a + b + 1))
    const emergence = 51 / 64
    for (const [seeds, plants] of [
      [30, 20],
      [80, 50],
    ] as const) {
      let reached = 0
      for (let run = 0; run < runs; run += 1) {
        const chance = drawBeta(a, b, random) * drawBeta(51, 13, random)
        let up = 0
        for (let seed = 0; seed < seeds; seed += 1) up += random() < chance ? 1 : 0
        reached += up >= plants ? 1 : 0
      }
      const computed = chanceOfPlants(plants, [{ seeds, viability: mean, deviation }], emergence)
      const error = Math.sqrt((computed * (1 - computed)) / runs)
      expect(Math.abs(reached / runs - computed)).toBeLessThan(4 * error + 0.005)
    }
  })

  test('is a chance whatever is asked, and grows with the seeds', () => {
    fc.assert(
      fc.property(
        fc.array(lot, { maxLength: 4 }),
        fc.integer({ min: 0, max: 600 }),
        emergences,
        (sown, plants, by) => {
          const chance = chanceOfPlants(plants, sown, by)
          expect(chance).toBeGreaterThanOrEqual(0)
          expect(chance).toBeLessThanOrEqual(1)
          const more = sown.map((one) => ({ ...one, seeds: 2 * one.seeds }))
          expect(chanceOfPlants(plants, more, by)).toBeGreaterThanOrEqual(chance - 1e-6)
        },
      ),
    )
  })

  test('stays as it is when a lot is split', () => {
    fc.assert(
      fc.property(lot, part, fc.integer({ min: 1, max: 300 }), emergences, (whole, at, plants, by) => {
        const first = Math.round(at * whole.seeds)
        const parts = [first, whole.seeds - first].map((seeds) => ({ ...whole, seeds }))
        expect(chanceOfPlants(plants, parts, by)).toBeCloseTo(chanceOfPlants(plants, [whole], by), 6)
      }),
    )
  })

  test('in words is never none nor all', () => {
    expect([0, 0.004, 0.906, 0.9999].map(timesIn100)).toEqual([1, 1, 91, 99])
  })
})

describe('the seeds that assure so many plants', () => {
  test('are as many as it takes and not one more', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        emergences,
        assurances,
        (plants, emergence, assurance) => {
          const seeds = livingSeedsFor(plants, emergence, assurance)
          expect(chanceOfPlants(plants, sure(seeds, 1), emergence)).toBeGreaterThanOrEqual(assurance)
          expect(chanceOfPlants(plants, sure(seeds - 1, 1), emergence)).toBeLessThan(assurance)
        },
      ),
    )
  })

  test('are found at the ends of what settings allow', () => {
    for (const [plants, emergence, assurance] of [
      [10_000, 0.05, 0.99],
      [1, 1, 0.99],
      [10_000, 1, 0.5],
    ] as const)
      expect(seedsToKeep({ regrowings: 20, plants, emergence, assurance })).toBeGreaterThanOrEqual(
        20 * plants,
      )
  })

  test('are sown of the lots, the same however a lot was split; where they are not there, the mean', () => {
    const policy = { regrowings: 3, plants: 20, emergence: 0.8, assurance: 0.9 }
    const of = (...seeds: number[]) =>
      sowingAdvice(
        seeds.map((held, lotId) => ({
          lotId,
          lotNumber: `HL-${lotId}`,
          seeds: held,
          viability: 0.9,
          deviation: 0.1,
        })),
        policy,
      )
    const whole = of(300)
    expect(whole?.chance).toBeGreaterThanOrEqual(0.9)
    expect(whole?.seeds).toBeGreaterThan(28)
    expect(of(20, 280)?.seeds).toBe(whole?.seeds)
    expect(of(15, 12, 273)?.seeds).toBe(whole?.seeds)
    expect(of(20, 18)?.seeds).toBe(whole?.seeds)
    const scant = of(34)
    expect(scant).toMatchObject({ enough: true, seeds: 28 })
    expect(scant?.chance).toBeLessThan(0.9)
  })
})
