import { expect, test } from 'vitest'
import { effectivePopulation, variationLeft } from '../../db/domain/needs/effective-population.ts'

/**
 * Six generations of 10, 100, 50, 80, 20 and 500: 1/Ne = 0.1945 / 6, Ne = 30.8, where the plain mean is 126.7. The worked
 * example of the encyclopaedia article on effective population size, after Karlin 1968 (seen in a copy).
 */
test('the worked example of six generations', () => {
  expect(effectivePopulation([10, 100, 50, 80, 20, 500])).toBeCloseTo(30.8, 1)
})

/** Nine generations of 1,000 and one of 10 behave like 92: natureincode.com, effective population size (seen). */
test('one narrow generation in ten', () => {
  expect(Math.round(effectivePopulation([...Array(9).fill(1_000), 10]))).toBe(92)
})

/** Tiger moths counted in four years: 11,000, 2,000, 11,000, 16,000 give 1/Ne = 0.000186 (seen in lecture notes). */
test('counts of a real population', () => {
  expect(1 / effectivePopulation([11_000, 2_000, 11_000, 16_000])).toBeCloseTo(0.000186, 6)
})

/** Wright 1931 (from memory): one generation of a single selfed pair of gametes, N = 1, halves the variation. */
test('variation left after one generation of one plant, and of fifty', () => {
  expect(variationLeft([1])).toBe(0.5)
  expect(variationLeft([50])).toBeCloseTo(0.99, 12)
})

test('no generations and a size of none are mistakes', () => {
  expect(() => effectivePopulation([])).toThrow(RangeError)
  expect(() => variationLeft([20, 0])).toThrow(RangeError)
})
