import fc from 'fast-check'
import { jStat } from 'jstat'
import { describe, expect, test } from 'vitest'
import { binomialChances } from '../../db/domain/germination/binomial.ts'
import { clopperPearsonInterval } from '../../db/domain/germination/clopper-pearson.ts'
import { chiSquaredTail, homogeneity } from '../../db/domain/germination/homogeneity.ts'
import { betaQuantile, incompleteBeta, logGamma } from '../../db/domain/germination/incomplete-beta.ts'
import { handbookYears } from '../../db/domain/germination/next-test.ts'
import { germinationSpeed } from '../../db/domain/germination/speed.ts'
import { stagedOutcome, stagedPlan } from '../../db/domain/germination/staged-plan.ts'
import { judgeTolerance } from '../../db/domain/germination/tolerance.ts'

const shares = (written: string) =>
  written.split(' ').map((plate) => {
    const [germinated = 0, sown = 0] = plate.split('/').map(Number)
    return { germinated, sown }
  })
const total = (plates: ReturnType<typeof shares>) => ({
  germinated: plates.reduce((sum, plate) => sum + plate.germinated, 0),
  sown: plates.reduce((sum, plate) => sum + plate.sown, 0),
})

describe('Clopper and Pearson’s limits', () => {
  test.each([
    // seen: documentation of SciPy's proportion_ci
    [7, 50, 0.0581917003, 0.2673960025, 9],
    // seen: help page of an online sample-size calculator, statulator.com/help/ci1P-help.html
    [12, 150, 0.042, 0.136, 3],
    // from memory: Newcombe 1998, Statistics in Medicine 17:857-872, table I
    [81, 263, 0.2527, 0.3676, 4],
    [15, 148, 0.0578, 0.1617, 4],
    [0, 20, 0, 0.1684, 4],
    [1, 29, 0.0009, 0.1776, 4],
  ])('%s of %s as published: %s to %s', (sprouted, tested, low, high, decimals) => {
    const [ourLow, ourHigh] = clopperPearsonInterval(sprouted, tested)
    expect(Math.abs(ourLow - low)).toBeLessThanOrEqual(0.5 * 10 ** -decimals)
    expect(Math.abs(ourHigh - high)).toBeLessThanOrEqual(0.5 * 10 ** -decimals)
  })

  test('agree with the quantiles of a general statistics library (jStat)', () => {
    const result = fc
      .integer({ min: 2, max: 400 })
      .chain((tested) => fc.tuple(fc.integer({ min: 1, max: tested - 1 }), fc.constant(tested)))
    fc.assert(
      fc.property(result, ([sprouted, tested]) => {
        const [low, high] = clopperPearsonInterval(sprouted, tested)
        expect(low).toBeCloseTo(jStat.beta.inv(0.025, sprouted, tested - sprouted + 1), 6)
        expect(high).toBeCloseTo(jStat.beta.inv(0.975, sprouted + 1, tested - sprouted), 6)
      }),
    )
  })
})

test('Clopper and Pearson’s limits end where all or none sprouted, and are of whole seeds', () => {
  // At the ends the limit is 0.025 to the power of 1 / n, or what that leaves of one (plain algebra).
  expect(clopperPearsonInterval(20, 20)).toEqual([expect.closeTo(0.025 ** (1 / 20), 9), 1])
  expect(clopperPearsonInterval(0, 1)).toEqual([0, expect.closeTo(0.975, 9)])
  for (const [sprouted, tested] of [
    [1.5, 4],
    [1, 4.5],
    [0, 0],
    [-1, 4],
    [5, 4],
    [Number.NaN, 4],
  ] as const)
    expect(() => clopperPearsonInterval(sprouted, tested)).toThrow(/^Not a germination result/)
})

test('the functions under the intervals refuse what they are not defined for, and take their ends', () => {
  for (const x of [0, -1, Number.NaN]) expect(() => logGamma(x)).toThrow(/logarithm of the gamma function/)
  for (const [x, a, b] of [
    [0.5, 0, 1],
    [0.5, 1, 0],
    [-0.1, 1, 1],
    [1.1, 1, 1],
    [0.5, Number.NaN, 1],
  ] as const)
    expect(() => incompleteBeta(x, a, b)).toThrow(/No incomplete beta/)
  for (const chance of [-0.1, 1.1, Number.NaN]) expect(() => betaQuantile(chance, 2, 3)).toThrow(RangeError)
  expect([incompleteBeta(0, 2, 3), incompleteBeta(1, 2, 3)]).toEqual([0, 1])
  expect([betaQuantile(0, 2, 3), betaQuantile(1, 2, 3)]).toEqual([expect.closeTo(0, 9), expect.closeTo(1, 4)])
  expect(() => homogeneity([{ sown: 0, germinated: 0 }])).toThrow(/Replicates without seed/)
  expect(homogeneity(shares('0/10 0/20'))).toEqual({ chiSquared: 0, degrees: 1 })
  expect([chiSquaredTail(0, 3), chiSquaredTail(-1, 3)]).toEqual([1, 1])
})

/** Held against jStat, whose own continued fraction is good to about seven digits (seen in its source). */
describe('the functions under the intervals agree with jStat', () => {
  const shape = fc.integer({ min: 1, max: 400 })
  test('incomplete beta, and its quantile undoes it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), shape, shape, (x, a, b) => {
        expect(incompleteBeta(x, a, b)).toBeCloseTo(jStat.ibeta(x, a, b), 6)
        const chance = incompleteBeta(x, a, b)
        if (chance > 1e-6 && chance < 1 - 1e-6) expect(betaQuantile(chance, a, b)).toBeCloseTo(x, 9)
      }),
    )
  })

  test('the gamma function, at whole numbers exactly the factorial', () => {
    expect(Math.exp(logGamma(11))).toBeCloseTo(3_628_800, 4)
    expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.sqrt(Math.PI)), 13)
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 900, noNaN: true }), (x) => {
        const theirs = jStat.gammaln(x)
        expect(Math.abs(logGamma(x) - theirs)).toBeLessThan(1e-9 * Math.max(1, Math.abs(theirs)))
      }),
    )
  })

  test('binomial chances and the chi-squared tail', () => {
    const theirs = binomialChances(40, 0.85).map((_, hits) => jStat.binomial.pdf(hits, 40, 0.85))
    for (const [hits, chance] of binomialChances(40, 0.85).entries()) {
      expect(chance).toBeCloseTo(theirs[hits] ?? Number.NaN, 10)
    }
    for (const [x, degrees] of [
      [9.9104, 5],
      [0.3, 1],
      [60, 8],
      [93.8178, 20],
    ] as const) {
      expect(chiSquaredTail(x, degrees)).toBeCloseTo(1 - jStat.chisquare.cdf(x, degrees), 9)
    }
  })
})

/**
 * Crowder 1978, Applied Statistics 27:34-37, table 3: seed of Orobanche aegyptiaca, germinated/tested by plate. Data and
 * the quasi-binomial answers seen (agridat's manual page and two more copies, all agreeing).
 */
describe('Crowder’s germination data, 21 plates of two kinds of seed in two extracts', () => {
  const groups = {
    o75Bean: shares('10/39 23/62 23/81 26/51 17/39'),
    o75Cucumber: shares('5/6 53/74 55/72 32/51 46/79 10/13'),
    o73Bean: shares('8/16 10/30 8/28 23/45 0/4'),
    o73Cucumber: shares('3/12 22/41 15/30 32/51 3/7'),
  }
  const all = Object.values(groups)
  const within = all.reduce((sum, plates) => sum + homogeneity(plates).chiSquared, 0)
  const degrees = all.reduce((sum, plates) => sum + homogeneity(plates).degrees, 0)

  test('the spread within groups gives the published errors of the quasi-binomial fit', () => {
    expect(degrees).toBe(17)
    // computed elsewhere with a general numeric library
    expect(within).toBeCloseTo(31.6511, 4)
    const logit = (group: keyof typeof groups) => {
      const { germinated, sown } = total(groups[group])
      return {
        value: Math.log(germinated / (sown - germinated)),
        spread: 1 / germinated + 1 / (sown - germinated),
      }
    }
    const base = logit('o73Bean')
    const seed = logit('o75Bean')
    const extract = logit('o73Cucumber')
    const both = logit('o75Cucumber')
    const dispersion = within / degrees
    const terms = [
      [base.value, base.spread],
      [seed.value - base.value, seed.spread + base.spread],
      [extract.value - base.value, extract.spread + base.spread],
      [
        both.value - seed.value - extract.value + base.value,
        both.spread + seed.spread + extract.spread + base.spread,
      ],
    ] as const
    // seen: intercept, O75, cucumber, both together, each with its standard error
    const published = ['-0.41 (0.25)', '-0.15 (0.30)', '0.54 (0.34)', '0.78 (0.42)']
    expect(
      terms.map(([value, spread]) => `${value.toFixed(2)} (${Math.sqrt(dispersion * spread).toFixed(2)})`),
    ).toEqual(published)
  })

  test('over all plates (computed elsewhere)', () => {
    const plates = all.flat()
    expect(total(plates)).toEqual({ germinated: 424, sown: 831 })
    expect(homogeneity(plates).chiSquared).toBeCloseTo(93.8178, 4)
  })
})

/** Crowder 1978, table 1: Orobanche cernua in three dilutions; published means seen (manual page of the R package aod). */
test.each([
  ['1/1', '2/43 9/51 5/44 16/71 2/24 0/7', '0.142', 9.9104],
  ['1/25', '17/19 43/56 79/87 50/55 9/10', '0.872', 7.3023],
  ['1/625', '11/13 47/62 90/104 46/51 9/11', '0.842', 5.1461],
])('Crowder’s dilution %s', (_dilution, written, mean, chiSquared) => {
  const plates = shares(written)
  const { germinated, sown } = total(plates)
  expect((germinated / sown).toFixed(3)).toBe(mean)
  // the X2 is computed elsewhere, not published
  expect(homogeneity(plates).chiSquared).toBeCloseTo(chiSquared, 4)
})

/** 7 CFR 201.55, 2015 edition, its two examples and rows spread over the table: seen. */
describe('the largest range between replicates of 100', () => {
  test.each([
    [99, 5],
    [98, 6],
    [95, 9],
    [94, 10],
    [90, 12],
    [87, 13],
    [84, 14],
    [81, 15],
    [80, 16],
    [76, 17],
    [71, 18],
    [66, 19],
    [51, 20],
    [50, 20],
    [35, 19],
    [13, 13],
    [2, 5],
  ])('four with a mean of %s %% may lie %s apart', (mean, allowed) => {
    const spread = (range: number) => {
      const low = mean - Math.floor(range / 2)
      return [low, low + range, mean, 4 * mean - (2 * low + range) - mean].map((germinated) => ({
        sown: 100,
        germinated,
      }))
    }
    expect(judgeTolerance(spread(allowed))).toMatchObject({ kind: 'within', by: 'table', allowed })
    expect(judgeTolerance(spread(allowed + 1))).toMatchObject({ kind: 'outside', by: 'table', allowed })
  })

  test.each([
    [97, 6],
    [90, 9],
    [80, 13],
    [52, 16],
    [4, 6],
  ])('two with a mean of %s %% may lie %s apart', (mean, allowed) => {
    const two = (range: number) =>
      [mean - Math.ceil(range / 2), mean + Math.floor(range / 2)].map((germinated) => ({
        sown: 100,
        germinated,
      }))
    expect(judgeTolerance(two(allowed))).toMatchObject({ by: 'table', kind: 'within', allowed })
    expect(judgeTolerance(two(allowed + 1))).toMatchObject({ by: 'table', kind: 'outside', allowed })
  })
})

/** Seen: the tests of the R package germinationmetrics (its t50 by Coolbear); the mean, 268 / 40, is plain arithmetic. */
test('speed of germination of a published example', () => {
  const counts = [0, 0, 0, 0, 4, 17, 10, 7, 1, 0, 1, 0, 0, 0].map((germinated, index) => ({
    day: index + 1,
    germinated,
  }))
  const speed = germinationSpeed(counts)
  expect(speed?.halfDays).toBeCloseTo(5.97058823529412, 12)
  expect(speed?.meanDays).toBeCloseTo(6.7, 12)
})

test('speed of what came in any order, all at once, or not at all', () => {
  const late = { day: 9, germinated: 4 }
  expect(germinationSpeed([late, { day: 3, germinated: 2 }, { day: 5, germinated: 4 }])).toEqual({
    meanDays: (9 * 4 + 3 * 2 + 5 * 4) / 10,
    // Half of ten is reached at 5.5 by that formula: between 2 on day 3 and 6 on day 5.
    halfDays: 3 + (3.5 * 2) / 4,
  })
  expect(germinationSpeed([late])).toEqual({ meanDays: 9, halfDays: null })
  expect(germinationSpeed([{ day: 9, germinated: 0 }])).toBeNull()
  expect(germinationSpeed([])).toBeNull()
})

describe('the sequential test of the 85 % standard', () => {
  const published = stagedPlan(0.85, 40, 400)

  test('Wald’s test of 85 % against 90 % with the table’s width gives every row of it', () => {
    const odds = (part: number) => Math.log(part / (1 - part))
    const slope = Math.log(0.15 / 0.1) / (odds(0.9) - odds(0.85))
    for (const { tested, regrowAtMost, keepAtLeast } of published.stages) {
      expect(regrowAtMost).toBe(Math.floor(slope * tested - 5.15))
      const keep = Math.ceil(slope * tested + 5.15)
      expect(keepAtLeast).toBe(keep > tested ? null : keep)
    }
  })

  /** Computed elsewhere by another program, for the table stopped at 360 seeds; not published. */
  test.each([
    [0.75, 1, 0, 0, 69],
    [0.8, 0.999, 0, 0.001, 101],
    [0.85, 0.813, 0.042, 0.145, 202],
    [0.9, 0.044, 0.798, 0.159, 220],
    [0.95, 0, 1, 0, 98],
  ])('at %s alive: regrow %s, keep %s, undecided %s, %s seeds', (alive, regrow, keep, undecided, seeds) => {
    const outcome = stagedOutcome(published, alive)
    expect(outcome.regrow).toBeCloseTo(regrow, 2)
    expect(outcome.keep).toBeCloseTo(keep, 2)
    expect(outcome.undecided).toBeCloseTo(undecided, 2)
    expect(Math.round(outcome.seeds)).toBe(seeds)
  })
})

/** Handbook No. 8 (Rao et al. 2006), table 8.1: the numbers seen, the row labels inferred. */
test('years to the next test by what germinated', () => {
  const row = (share: number) => [
    handbookYears(share, false, false),
    handbookYears(share, false, true),
    handbookYears(share, true, false),
    handbookYears(share, true, true),
  ]
  expect([0.8, 0.87, 0.92, 0.97].map(row)).toEqual([
    [3, 1, 5, 2],
    [5, 3, 10, 5],
    [8, 5, 15, 8],
    [12, 8, 20, 12],
  ])
})
