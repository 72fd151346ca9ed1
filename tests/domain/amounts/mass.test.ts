import fc from 'fast-check'
import { expect, test } from 'vitest'
import { measuredOf } from '../../../db/domain/amounts/amount.ts'
import { MILLIGRAMS_PER, massFrom, massIn, milligrams } from '../../../db/domain/amounts/mass.ts'
import { seedCount } from '../../../db/domain/amounts/seed-count.ts'
import { anyMass, counted, guessed, weighed } from '../../builders/domain-values.ts'

const NOT_WHOLE = [-1, -0.5, 0.5, Number.NaN, Number.POSITIVE_INFINITY, 2 ** 53]

test.each(NOT_WHOLE)('%s is neither a mass in milligrams nor a count of seeds', (value) => {
  expect(() => milligrams(value)).toThrow(RangeError)
  expect(() => seedCount(value)).toThrow(RangeError)
})

test('zero and whole numbers are masses and counts', () => {
  expect(milligrams(0)).toBe(0)
  expect(milligrams(2 ** 53 - 1)).toBe(2 ** 53 - 1)
  expect(seedCount(0)).toBe(0)
  expect(seedCount(25)).toBe(25)
})

test.each([
  [12.5, 'g', 12_500],
  [0.0004, 'g', 0],
  [0.0005, 'g', 1],
  [1, 'kg', 1_000_000],
  [0.5, 'oz', 14_175],
  [2, 'lb', 907_185],
] as const)('%s %s is %s mg', (value, unit, mg) => {
  expect(massFrom(value, unit)).toBe(mg)
})

test('a negative or endless number of a unit is no mass', () => {
  expect(() => massFrom(-1, 'g')).toThrow(RangeError)
  expect(() => massFrom(Number.NaN, 'g')).toThrow(RangeError)
  expect(() => massFrom(Number.MAX_VALUE, 'kg')).toThrow(RangeError)
})

test('a mass goes into every unit and back to the same milligram', () => {
  const units = Object.keys(MILLIGRAMS_PER) as (keyof typeof MILLIGRAMS_PER)[]
  fc.assert(
    fc.property(anyMass, fc.constantFrom(...units), (mass, unit) => {
      expect(massFrom(massIn(mass, unit), unit)).toBe(mass)
    }),
  )
})

test('what was observed follows from how the amount was given', () => {
  expect(measuredOf(weighed(5))).toBe('mass')
  expect(measuredOf(counted(5))).toBe('count')
  expect(measuredOf(guessed(5))).toBe('estimate')
})
