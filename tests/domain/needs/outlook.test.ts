import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { outlookAt } from '../../../db/domain/needs/cost-of-waiting.ts'
import {
  aged,
  agedByForecast,
  beliefFromAssumption,
  beliefFromBand,
  beliefFromTest,
  chanceOfFewerThan,
  livingOutlook,
} from '../../../db/domain/needs/outlook.ts'
import { normalBelow, normalQuantile } from '../../../db/domain/viability/normal.ts'

const counted = (seeds: number, sprouted: number, tested: number) => ({
  seeds,
  countDoubt: 0,
  belief: beliefFromTest(sprouted, tested),
})

describe('ageing', () => {
  test('sound seed is half alive when the years that the crop keeps are over', () => {
    expect(aged({ mean: 0.9, deviation: 0.05 }, 3, 3).mean).toBeCloseTo(0.5, 12)
    expect(aged({ mean: 0.9, deviation: 0.05 }, 0, 3)).toEqual({ mean: 0.9, deviation: 0.05 })
  })

  test('by its forecast a lot goes down the curve of the equation', () => {
    const now = { mean: 0.95, deviation: 0.03 }
    expect(agedByForecast(now, 0, 0.2)).toEqual(now)
    expect(agedByForecast(now, 4, 0.2).mean).toBeCloseTo(normalBelow(normalQuantile(0.95) - 0.8), 12)
    expect(agedByForecast(now, 4, 0.2).deviation).toBeGreaterThan(now.deviation)
    expect(() => agedByForecast(now, 1, -0.1)).toThrow(RangeError)
  })

  test('longer in store is never better, and never more certain of what part of itself it is off', () => {
    const years = fc.double({ min: 0.1, max: 8, noNaN: true })
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.98, noNaN: true }), years, years, (mean, some, more) => {
        const belief = { mean, deviation: 0.05 }
        expect(aged(belief, some + more, 4).mean).toBeLessThan(aged(belief, some, 4).mean)
      }),
    )
  })

  test('seed that keeps no years is a mistake', () => {
    expect(() => aged(beliefFromAssumption(0.5), 1, 0)).toThrow(RangeError)
  })
})

test('a forecast’s band of nine in ten is 1.645 deviations to either side', () => {
  expect(beliefFromBand(0.6, [0.4355, 0.7645])).toEqual({ mean: 0.6, deviation: expect.closeTo(0.1, 12) })
})

describe('the chance of too few', () => {
  test('rises with what is wanted and falls with what there is', () => {
    const at = (wanted: number, seeds: number) =>
      chanceOfFewerThan(wanted, livingOutlook([counted(seeds, 30, 50)]))
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 300 }),
        fc.integer({ min: 1, max: 400 }),
        fc.nat(100),
        (wanted, seeds, more) => {
          expect(at(wanted + more, seeds)).toBeGreaterThanOrEqual(at(wanted, seeds) - 1e-9)
          expect(at(wanted, seeds)).toBeGreaterThanOrEqual(0)
          expect(at(wanted, seeds)).toBeLessThanOrEqual(1)
        },
      ),
    )
    expect(at(60, 120)).toBeGreaterThan(at(60, 240))
  })

  test('no seed is certainly too few, and nothing wanted is never too few', () => {
    expect(chanceOfFewerThan(1, livingOutlook([]))).toBe(1)
    expect(chanceOfFewerThan(0, livingOutlook([]))).toBe(0)
  })

  test('a certain belief is a step', () => {
    const sure = { mean: 50, deviation: 1e-9, most: 100 }
    expect([chanceOfFewerThan(50, sure), chanceOfFewerThan(51, sure)]).toEqual([0, 1])
  })
})

describe('waiting', () => {
  const policy = { regrowings: 3, plants: 20, emergence: 0.8 }
  const facts = (seeds: number, demand = 0) => ({
    lots: [{ seeds, countDoubt: 0, beliefIn: (years: number) => aged(beliefFromTest(45, 50), years, 2) }],
    policy,
    demand,
  })

  test('the cost rises from season to season', () => {
    const costs = [0, 1, 2, 3].map((years) => outlookAt(facts(60), years).cost)
    expect(costs).toEqual(costs.toSorted((a, b) => a - b))
    expect(costs[0]).toBeLessThan(0.01)
    expect(costs[3]).toBeGreaterThan(0.7)
  })

  test('members take of what is to spare and not of what is kept', () => {
    const [none, some, all] = [0, 100, 100_000].map((demand) => outlookAt(facts(400, demand), 1).living.mean)
    expect(some).toBeLessThan(none ?? 0)
    expect(all).toBeCloseTo(75, 6)
    expect(outlookAt(facts(60, 1_000), 1)).toEqual(outlookAt(facts(60, 0), 1))
  })

  test('dead seed beside it never makes waiting safer: nobody takes it in place of the living', () => {
    const beside = (dead: number) => {
      const lost = { seeds: dead, countDoubt: 0, beliefIn: () => ({ mean: 1e-6, deviation: 1e-6 }) }
      return outlookAt({ lots: [...facts(400).lots, lost], policy, demand: 150 }, 1).living.mean
    }
    expect(beside(0)).toBeCloseTo(outlookAt(facts(400, 150), 1).living.mean, 9)
    expect(beside(10_000)).toBeCloseTo(beside(0), 1)
  })

  test('an empty accession has lost everything already', () => {
    expect(outlookAt({ lots: [], policy, demand: 4 }, 1)).toMatchObject({
      cost: 1,
      living: { mean: 0, most: 0 },
    })
  })
})
