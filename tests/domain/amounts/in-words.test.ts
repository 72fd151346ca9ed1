import fc from 'fast-check'
import { expect, test } from 'vitest'
import { massInWords, massToType, numberInWords, toFigures } from '../../../db/domain/amounts/in-words.ts'
import { milligrams } from '../../../db/domain/amounts/mass.ts'
import { BRITISH } from '../../builders/domain-values.ts'

test.each([
  [0, '0 mg'],
  [340, '340 mg'],
  [999, '999 mg'],
  [1_000, '1 g'],
  [12_500, '12.5 g'],
  [31_187, '31.187 g'],
  [100_000, '100 g'],
  [999_999, '999.999 g'],
  [1_000_000, '1 kg'],
  [1_200_000, '1.2 kg'],
  [1_234_567, '1.234567 kg'],
])('%s mg in words is %s', (mg, words) => {
  expect(massInWords(milligrams(mg), BRITISH)).toBe(words)
})

/**
 * The avoirdupois ounce is 28.349523125 g and the pound 453.59237 g (NIST Handbook 44, appendix C, from memory), which also
 * gives 1 g as 0.035 oz and 1 kg as 2.205 lb.
 */
test.each([
  [0, '0 oz'],
  [5, '0.000176 oz'],
  [1_000, '0.0353 oz'],
  [12_500, '0.441 oz'],
  [14_175, '0.5 oz'],
  [100_000, '3.527 oz'],
  [453_592, '16 oz'],
  [453_593, '1 lb'],
  [1_000_000, '2.205 lb'],
  [100_000_000, '220.462 lb'],
])('%s mg in words is %s where ounces are written', (mg, words) => {
  expect(massInWords(milligrams(mg), { locale: 'en-US', massUnits: 'ounces' })).toBe(words)
})

test('a mass takes the decimal mark of the locale', () => {
  expect(massInWords(milligrams(12_500), { locale: 'de-DE', massUnits: 'metric' })).toBe('12,5 g')
  expect(massInWords(milligrams(12_500), { locale: 'de-DE', massUnits: 'ounces' })).toBe('0,441 oz')
})

test('three decimals get a fourth where the text is to be typed', () => {
  expect(massToType(milligrams(31_187), BRITISH)).toBe('31.1870 g')
  expect(massToType(milligrams(1_235_000), BRITISH)).toBe('1.2350 kg')
  expect(massToType(milligrams(12_500), BRITISH)).toBe('12.5 g')
  expect(massToType(milligrams(31_187), { locale: 'de-DE', massUnits: 'metric' })).toBe('31,1870 g')
  expect(massToType(milligrams(31_187), { locale: 'en-US', massUnits: 'ounces' })).toBe('1.1001 oz')
  expect(massToType(milligrams(1_234_567_890), { locale: 'de-DE', massUnits: 'metric' })).toBe(
    '1234,56789 kg',
  )
})

test('a number has the marks of the locale between thousands', () => {
  expect(numberInWords(1_234_567, BRITISH)).toBe('1,234,567')
  expect(numberInWords(999, BRITISH)).toBe('999')
  expect(numberInWords(-1_234, BRITISH)).toBe('-1,234')
  expect(numberInWords(1_234_567, { locale: 'de-DE' })).toBe('1.234.567')
  expect(numberInWords(1_234_567, { locale: 'en-IN' })).toBe('12,34,567')
  expect(numberInWords(1_234, { locale: 'fr-FR' })).toBe('1\u00a0234')
  expect(numberInWords(1_234, { locale: 'ar-EG' })).toBe('1,234')
  expect(numberInWords(12.25, { locale: 'de-DE' }, 1)).toBe('12,3')
})

test('rounding to figures moves a count by at most half of its last figure', () => {
  fc.assert(
    fc.property(fc.nat(1_000_000_000), fc.integer({ min: 1, max: 6 }), (count, figures) => {
      const rounded = toFigures(count, figures)
      expect(Math.abs(rounded - count)).toBeLessThanOrEqual(count * 0.5 * 10 ** (1 - figures))
      expect(toFigures(rounded, figures)).toBe(rounded)
      expect(String(rounded).replace(/0+$/, '').length).toBeLessThanOrEqual(figures)
    }),
  )
})
