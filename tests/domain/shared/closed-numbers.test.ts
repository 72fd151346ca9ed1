import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { binomialChances } from '../../../db/domain/germination/binomial.ts'
import { clopperPearsonInterval } from '../../../db/domain/germination/clopper-pearson.ts'
import { chiSquaredTail } from '../../../db/domain/germination/homogeneity.ts'
import { incompleteBeta, logGamma } from '../../../db/domain/germination/incomplete-beta.ts'
import { stagedOutcome, stagedPlan } from '../../../db/domain/germination/staged-plan.ts'
import { testOfSize } from '../../../db/domain/germination/test-size.ts'
import { probabilityAtLeast } from '../../../db/domain/germination/threshold-verdict.ts'
import { outlookAt } from '../../../db/domain/needs/cost-of-waiting.ts'
import {
  aged,
  agedByForecast,
  beliefFromAssumption,
  beliefFromBand,
  beliefFromTest,
  chanceOfFewerThan,
  livingOutlook,
  type ViabilityBelief,
} from '../../../db/domain/needs/outlook.ts'
import { chanceBelow, crossingBand, viabilityBand } from '../../../db/domain/viability/band.ts'
import { normalBelow, normalQuantile } from '../../../db/domain/viability/normal.ts'
import { priorOf } from '../../../db/domain/viability/prior.ts'
import { learnFromTests } from '../../../db/domain/viability/test-sense.ts'
import { sized } from '../../support/sized.ts'

/** Examples of each law: few in every run of the tests, many in the long one. */
const numRuns = sized(150, 5_000)

/** Parts of one from the smallest that a number can hold to the largest below one, the ends often. */
const part = fc.oneof(
  fc.constantFrom(0, 5e-324, 1e-300, 1e-17, 2 ** -53, 0.5, 1 - 2 ** -53, 1),
  fc.double({ min: 0, max: 1, noNaN: true }),
)
const aboveZero = fc.oneof(
  fc.constantFrom(5e-324, 1e-310, 1e-9, 0.01, 1, 400, 1e6),
  fc.double({ min: Number.MIN_VALUE, max: 1e6, noNaN: true }),
)
const seeds = fc.oneof(fc.constantFrom(0, 1, 2, 1_000_000), fc.nat(3_000))
/** Years and deviates a year of the coldest store and of the hottest, dampest one for ever. */
const loss = fc.oneof(fc.constantFrom(0, 5e-324, 38, 1e3, 1e9), fc.double({ min: 0, max: 100, noNaN: true }))
const tested = fc
  .oneof(
    fc.constantFrom([0, 1], [1, 1], [400, 400], [0, 400], [1_000_000, 1_000_000]),
    fc.tuple(fc.nat(400), fc.nat(400)),
  )
  .map(([sprouted, more]) => ({ sprouted: sprouted ?? 0, tested: Math.max(1, sprouted ?? 0, more ?? 0) }))

/** What is believed of a lot in each of the ways there are, aged in each of the ways there are. */
const belief: fc.Arbitrary<ViabilityBelief> = fc
  .tuple(
    fc.oneof(
      tested.map(({ sprouted, tested: of }) => beliefFromTest(sprouted, of)),
      part.map(beliefFromAssumption),
      fc.tuple(part, part, part).map((parts) => {
        const [low = 0, middle = 0, high = 0] = parts.toSorted((a, b) => a - b)
        return beliefFromBand(middle, [low, high])
      }),
    ),
    loss,
    loss,
    fc.boolean(),
  )
  .map(([now, years, pace, byForecast]) =>
    byForecast ? agedByForecast(now, years, pace) : aged(now, years, Math.max(pace, 0.01)),
  )

function expectPart(value: number, what: string): void {
  expect(value, what).toBeGreaterThanOrEqual(0)
  expect(value, what).toBeLessThanOrEqual(1)
}

function holds<T>(input: fc.Arbitrary<T>, law: (value: T) => void): void {
  const property = fc.property(input, (value) => {
    law(value)
  })
  fc.assert(property, { numRuns, seed: 20261130 })
}

describe('a chance is never outside 0 and 1 and always a number', () => {
  test('of the incomplete beta function', () => {
    holds(fc.tuple(part, aboveZero, aboveZero), ([x, a, b]) =>
      expectPart(incompleteBeta(x, a, b), `I at ${x} of ${a}, ${b}`),
    )
  })

  test('of the normal distribution, and its quantiles are numbers', () => {
    holds(fc.double({ noNaN: true }), (x) => expectPart(normalBelow(x), `below ${x}`))
    holds(
      part.filter((x) => x > 0 && x < 1),
      (x) => expect(Number.isFinite(normalQuantile(x)), `at ${x}`).toBe(true),
    )
    holds(aboveZero, (x) => expect(Number.isFinite(logGamma(x)), `of ${x}`).toBe(true))
  })

  test('of counts', () => {
    holds(fc.tuple(fc.integer({ min: 1, max: 400 }), part), ([trials, of]) => {
      const chances = binomialChances(trials, of)
      expectPart(Math.min(...chances), `of ${trials} at ${of}`)
      expectPart(Math.max(...chances), `of ${trials} at ${of}`)
      expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9)
    })
    holds(fc.tuple(aboveZero, fc.integer({ min: 1, max: 99 })), ([chiSquared, degrees]) =>
      expectPart(chiSquaredTail(chiSquared, degrees), `of ${chiSquared} with ${degrees}`),
    )
  })

  test('of a test and its plan', () => {
    holds(fc.tuple(part, tested), ([threshold, { sprouted, tested: of }]) => {
      expectPart(probabilityAtLeast(threshold, sprouted, of), `${sprouted} of ${of} at ${threshold}`)
      for (const end of clopperPearsonInterval(sprouted, of)) expectPart(end, `${sprouted} of ${of}`)
    })
    const threshold = fc.constantFrom(0.05, 0.5, 0.85, 0.99)
    fc.assert(
      fc.property(threshold, part, fc.constantFrom(1, 10, 40), (at, alive, group) => {
        expectPart(testOfSize(group, at, alive).decides, `${group} at ${at}`)
        const { regrow, keep, undecided } = stagedOutcome(stagedPlan(at, group, 9 * group), alive)
        for (const chance of [regrow, keep, undecided]) expectPart(chance, `${group} at ${at}, ${alive}`)
      }),
      { numRuns: Math.ceil(numRuns / 3), seed: 20261130 },
    )
  })
})

describe('what is believed of a lot is closed', () => {
  test('whatever it was tested at and however long it lay: a part, with no more doubt than a part can have', () => {
    holds(belief, ({ mean, deviation }) => {
      expectPart(mean, 'the mean')
      expectPart(deviation, 'the deviation')
      expect(deviation ** 2).toBeLessThanOrEqual(mean * (1 - mean) + 1e-12)
    })
  })

  test('the chance of too few living seeds, of one lot and of several', () => {
    const lot = fc.record({
      origin: fc.constantFrom(1, 2),
      seeds,
      countDoubt: fc.constantFrom(0, 0.01, 0.9),
      belief,
    })
    holds(fc.tuple(fc.array(lot, { maxLength: 4 }), fc.integer({ min: 0, max: 5_000 })), ([lots, wanted]) => {
      const outlook = livingOutlook(lots)
      expect(Number.isFinite(outlook.mean) && Number.isFinite(outlook.deviation)).toBe(true)
      expectPart(chanceOfFewerThan(wanted, outlook), JSON.stringify({ lots, wanted }))
    })
  })

  test('the cost of waiting', () => {
    const lot = fc.record({
      seeds,
      origin: fc.constantFrom(1, 2),
      countDoubt: fc.constantFrom(0, 0.25),
      beliefIn: belief.map((of) => () => of),
    })
    const policy = fc.record({
      regrowings: fc.constantFrom(1, 3, 20),
      plants: fc.constantFrom(1, 60, 1_000),
      emergence: fc.constantFrom(0.05, 0.8, 1),
    })
    const demand = fc.constantFrom(0, 1, 1_000_000)
    holds(fc.tuple(fc.array(lot, { maxLength: 3 }), policy, demand), ([lots, of, wanted]) => {
      const { living, cost } = outlookAt({ lots, policy: of, demand: wanted }, 1)
      expectPart(cost, JSON.stringify({ lots, of, wanted }))
      expect(living.mean).toBeGreaterThanOrEqual(0)
    })
  })

  test('a forecast from any tests, after any loss', () => {
    const facts = {
      leastSold: 0.7,
      keepingMeasured: true,
      extrapolates: 'nowhere',
      logPaceByYears: null,
    } as const
    const prior = priorOf({ ...facts, basis: 'rule-of-thumb' })
    const placed = fc.tuple(tested, loss).map(([test, lost]) => ({ ...test, lost }))
    const threshold = fc.record({
      part: fc.constantFrom(0.05, 0.85, 1),
      of: fc.constantFrom('all-seeds' as const, 'the-start' as const),
    })
    fc.assert(
      fc.property(fc.array(placed, { maxLength: 3 }), loss, threshold, (tests, lost, at) => {
        const sorted = tests.toSorted((one, other) => one.lost - other.lost)
        const { posterior } = learnFromTests(prior, sorted)
        const { low, middle, high } = viabilityBand(posterior, lost)
        for (const end of [low, middle, high]) expectPart(end, JSON.stringify({ sorted, lost }))
        expect(low <= middle && middle <= high).toBe(true)
        expectPart(chanceBelow(posterior, at, lost), JSON.stringify({ sorted, lost, at }))
        expect(crossingBand(posterior, at).middle).toBeGreaterThanOrEqual(0)
      }),
      { numRuns: Math.ceil(numRuns / 3), seed: 20261130 },
    )
  })
})
