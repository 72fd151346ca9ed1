import fc from 'fast-check'
import { jStat } from 'jstat'
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
  origin: 1,
  seeds,
  countDoubt: 0,
  belief: beliefFromTest(sprouted, tested),
})

describe('ageing', () => {
  test('sound seed is half alive when the years that the crop keeps are over', () => {
    expect(aged({ mean: 0.9, deviation: 0.05 }, 3, 3).mean).toBeCloseTo(0.5, 12)
    expect(aged({ mean: 0.9, deviation: 0.05 }, 0, 3)).toEqual({ mean: 0.9, deviation: 0.05 })
    expect(aged({ mean: 0.9, deviation: 0.05 }, 2, null)).toEqual(aged({ mean: 0.9, deviation: 0.05 }, 2, 3))
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

describe('the deviation of aged seed', () => {
  const belief = { mean: 0.8, deviation: 0.04 }
  /** How steeply what is alive later follows what is alive now, found by a small step of it. */
  const slope = (later: (mean: number) => number) => (later(0.8 + 1e-6) - later(0.8 - 1e-6)) / 2e-6

  test('by the rule of thumb holds the doubt from before, carried on, and half of the fall', () => {
    const at = (mean: number, years: number) => aged({ ...belief, mean }, years, 4).mean
    const carried = 0.04 * slope((mean) => at(mean, 3))
    const pace = (0.5 * 3 * (at(0.8, 3 - 1e-6) - at(0.8, 3 + 1e-6))) / 2e-6
    expect(aged(belief, 3, 4).deviation).toBeCloseTo(Math.hypot(carried, pace), 6)
  })

  test('by its forecast likewise', () => {
    const at = (mean: number, years: number) => agedByForecast({ ...belief, mean }, years, 0.3).mean
    const carried = 0.04 * slope((mean) => at(mean, 3))
    const pace = (0.5 * 3 * (at(0.8, 3 - 1e-6) - at(0.8, 3 + 1e-6))) / 2e-6
    expect(agedByForecast(belief, 3, 0.3).deviation).toBeCloseTo(Math.hypot(carried, pace), 6)
  })

  test.each([0, 1])(
    'seed of which the part %i is alive stays so, and so does all that waits no longer',
    (mean) => {
      const sure = { mean, deviation: 0.04 }
      expect([aged(sure, 3, 4), agedByForecast(sure, 3, 0.3)]).toEqual([sure, sure])
      expect([aged(belief, -1, 4), agedByForecast(belief, -1, 0.3)]).toEqual([belief, belief])
      expect(agedByForecast(belief, 3, 0).mean).toBeCloseTo(0.8, 12)
    },
  )
})

test('a test leaves the mean and deviation of its Beta posterior', () => {
  const [alpha, beta] = [46, 6]
  const { mean, deviation } = beliefFromTest(45, 50)
  expect(mean).toBeCloseTo(jStat.beta.mean(alpha, beta), 12)
  expect(deviation ** 2).toBeCloseTo(jStat.beta.variance(alpha, beta), 12)
})

test('an assumed part is believed to fifteen in a hundred', () => {
  expect(beliefFromAssumption(0.6)).toEqual({ mean: 0.6, deviation: 0.15 })
})

describe('living seeds of several lots', () => {
  const lot = (changes: object) => ({
    origin: 1,
    seeds: 100,
    countDoubt: 0,
    belief: { mean: 0.8, deviation: 0 },
    ...changes,
  })

  test('have three doubts: each seed’s chance, the part alive, and the count', () => {
    expect(livingOutlook([lot({})])).toEqual({
      mean: 80,
      deviation: expect.closeTo(4, 12),
      most: 100,
    })
    const unsure = livingOutlook([lot({ belief: { mean: 0.8, deviation: 0.1 } })])
    expect(unsure.deviation).toBeCloseTo(Math.hypot(4, 10), 12)
    const weighed = livingOutlook([lot({ countDoubt: 0.049 })])
    expect(weighed).toEqual({
      mean: 80,
      deviation: expect.closeTo(Math.hypot(4, 2), 12),
      most: expect.closeTo(104.9, 9),
    })
  })

  test('are alive to one part where they are of one origin, and each to its own where they are not', () => {
    const unsure = (origin: number) => lot({ origin, belief: { mean: 0.8, deviation: 0.1 } })
    const chance = 2 * 16
    const whole = livingOutlook([lot({ seeds: 200, belief: { mean: 0.8, deviation: 0.1 } })])
    expect(livingOutlook([unsure(1), unsure(1)])).toEqual(whole)
    expect(whole.deviation).toBeCloseTo(Math.sqrt(chance + 20 ** 2), 12)
    expect(livingOutlook([unsure(1), unsure(2)]).deviation).toBeCloseTo(Math.sqrt(chance + 2 * 10 ** 2), 12)
  })

  test('are counted wrong all the same way: what was not weighed goes by one weight', () => {
    const guessed = (origin: number) => lot({ origin, countDoubt: 0.245 })
    expect(livingOutlook([guessed(1), guessed(2)]).deviation).toBeCloseTo(Math.hypot(Math.sqrt(32), 20), 12)
  })

  test('add up, their variances too', () => {
    expect(livingOutlook([lot({}), lot({ seeds: 400, belief: { mean: 0.5, deviation: 0 } })])).toEqual({
      mean: 280,
      deviation: expect.closeTo(Math.sqrt(16 + 100), 12),
      most: 500,
    })
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

  test('is that of the Beta distribution with the same mean and deviation', () => {
    const [alpha, beta, most] = [12, 5, 200]
    const outlook = {
      mean: most * jStat.beta.mean(alpha, beta),
      deviation: most * Math.sqrt(jStat.beta.variance(alpha, beta)),
      most,
    }
    for (const wanted of [1, 100, 141, 180, 200])
      expect(chanceOfFewerThan(wanted, outlook)).toBeCloseTo(
        jStat.beta.cdf((wanted - 0.5) / most, alpha, beta),
        9,
      )
    expect(chanceOfFewerThan(201, outlook)).toBe(1)
  })

  test('with more doubt than a part of a hundred can have, all is alive or nothing', () => {
    expect(chanceOfFewerThan(10, { mean: 30, deviation: 90, most: 100 })).toBeCloseTo(0.7, 1)
  })

  test('where none or all is certainly alive it is certain', () => {
    expect(chanceOfFewerThan(1, { mean: 0, deviation: 5, most: 100 })).toBe(1)
    expect(chanceOfFewerThan(100, { mean: 100, deviation: 5, most: 100 })).toBe(0)
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
    lots: [
      {
        origin: 1,
        seeds,
        countDoubt: 0,
        beliefIn: (years: number) => aged(beliefFromTest(45, 50), years, 2),
      },
    ],
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
      const lost = {
        origin: 2,
        seeds: dead,
        countDoubt: 0,
        beliefIn: () => ({ mean: 1e-6, deviation: 1e-6 }),
      }
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
