import fc from 'fast-check'
import { cumulativeStdNormalProbability } from 'simple-statistics'
import { describe, expect, test } from 'vitest'
import { wilsonInterval } from '../../db/domain/germination/wilson.ts'

/** Published limits, to the digits that were printed. */
describe('95 % limits as published', () => {
  test.each([
    // seen: help page of an online sample-size calculator, statulator.com/help/ci1P-help.html
    [12, 150, 0.046, 0.135, 3],
    // seen: two statistics packages' output in a discussion of fastR2 (issue 15 on GitHub)
    [0, 10, 0, 0.2775328, 7],
    // seen: a worked value in garak issue 2033 on GitHub
    [10, 10, 0.7225, 1, 4],
    // from memory: Newcombe 1998, Statistics in Medicine 17:857-872, table I
    [81, 263, 0.2553, 0.3662, 4],
    [15, 148, 0.0624, 0.1605, 4],
    [0, 20, 0, 0.1611, 4],
    [1, 29, 0.0061, 0.1718, 4],
  ])('%s of %s: %s to %s', (sprouted, tested, low, high, decimals) => {
    const [ourLow, ourHigh] = wilsonInterval(sprouted, tested)
    expect(ourLow.toFixed(decimals)).toBe(low.toFixed(decimals))
    expect(ourHigh.toFixed(decimals)).toBe(high.toFixed(decimals))
  })
})

/** Not published: worked out from the formula with a general numeric library, for tests of the sizes used here. */
describe('95 % limits as computed elsewhere from the same formula', () => {
  test.each([
    [7, 50, 0.069508, 0.261862],
    [34, 40, 0.709277, 0.929388],
    [85, 100, 0.767164, 0.90694],
    [170, 200, 0.793944, 0.892864],
    [340, 400, 0.811686, 0.881655],
  ])('%s of %s: %s to %s', (sprouted, tested, low, high) => {
    const [ourLow, ourHigh] = wilsonInterval(sprouted, tested)
    expect(ourLow).toBeCloseTo(low, 6)
    expect(ourHigh).toBeCloseTo(high, 6)
  })
})

/**
 * E. B. Wilson 1927, Journal of the American Statistical Association 22:209-212 (from memory): the limits are the two
 * true parts p from which the observed part lies exactly z standard errors, sqrt(p (1 - p) / n), away.
 */
test('each limit lies 1.96 standard errors of its own from what was observed', () => {
  const result = fc
    .integer({ min: 2, max: 1_000 })
    .chain((tested) => fc.tuple(fc.integer({ min: 1, max: tested - 1 }), fc.constant(tested)))
  fc.assert(
    fc.property(result, ([sprouted, tested]) => {
      for (const limit of wilsonInterval(sprouted, tested)) {
        const errors = Math.abs(sprouted / tested - limit) / Math.sqrt((limit * (1 - limit)) / tested)
        expect(errors).toBeCloseTo(1.959964, 5)
      }
    }),
  )
  // Two and a half percent of a normal distribution lie beyond, by simple-statistics' table of it.
  expect(cumulativeStdNormalProbability(1.959964)).toBeCloseTo(0.975, 3)
})

/** Seen: statsmodels pull request 10010. Rounding can push the limits just outside 0 and 1 for these two results. */
test.each([
  [38, 38],
  [0, 77],
])('%s of %s stays within 0 and 1', (sprouted, tested) => {
  const [low, high] = wilsonInterval(sprouted, tested)
  expect(low).toBeGreaterThanOrEqual(0)
  expect(high).toBeLessThanOrEqual(1)
  expect(sprouted === 0 ? low : high).toBe(sprouted === 0 ? 0 : 1)
})

/** Computed from the closed formula with z = 1.644854; 12 of 150 at 95 % is published above. */
test('the 90 % interval lies inside the 95 % one', () => {
  const [low, high] = wilsonInterval(12, 150, 90)
  expect(low).toBeCloseTo(0.0506, 3)
  expect(high).toBeCloseTo(0.1243, 3)
  expect(wilsonInterval(0, 10, 90)).toEqual([0, expect.closeTo(1.644854 ** 2 / (10 + 1.644854 ** 2), 6)])
})
