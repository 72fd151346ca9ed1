import { expect, test } from 'vitest'
import { MILLIGRAMS_PER, massFrom } from '../../db/domain/amounts/mass.ts'

/**
 * International yard and pound agreement of 1959: 1 lb = 0.45359237 kg exactly. Restated in NIST Special Publication
 * 811, appendix B, and NIST Handbook 44, appendix C: 1 lb = 16 oz = 7000 grains, 1 grain = 64.79891 mg exactly.
 * All from memory; the three definitions are checked against each other.
 */
const POUND_IN_KILOGRAMS = 0.45359237
const GRAIN_IN_MILLIGRAMS = 64.79891

test('the definitions agree with each other: a pound is 7000 grains', () => {
  expect(7_000 * GRAIN_IN_MILLIGRAMS).toBeCloseTo(POUND_IN_KILOGRAMS * 1_000_000, 6)
})

test('a pound is 0.45359237 kg', () => {
  expect(MILLIGRAMS_PER.lb).toBeCloseTo(POUND_IN_KILOGRAMS * 1_000_000, 9)
})

test('an ounce is a sixteenth of a pound, and 437.5 grains', () => {
  expect(MILLIGRAMS_PER.oz * 16).toBeCloseTo(MILLIGRAMS_PER.lb, 9)
  expect(MILLIGRAMS_PER.oz).toBeCloseTo(437.5 * GRAIN_IN_MILLIGRAMS, 9)
})

/** The international system of units: kilo is a thousand, milli a thousandth. */
test('metric units are powers of a thousand', () => {
  expect([MILLIGRAMS_PER.mg, MILLIGRAMS_PER.g, MILLIGRAMS_PER.kg]).toEqual([1, 1e3, 1e6])
})

test('converted masses are the definition to the nearest milligram', () => {
  expect(massFrom(1, 'lb')).toBe(453_592)
  expect(massFrom(1, 'oz')).toBe(28_350)
  expect(massFrom(100, 'oz')).toBe(2_834_952)
  expect(massFrom(0.5, 'kg')).toBe(500_000)
})
