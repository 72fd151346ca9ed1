import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  aboutCount,
  countInWords,
  grouped,
  massInWords,
  massToType,
  toFigures,
} from '../../../db/domain/amounts/in-words.ts'
import { milligrams } from '../../../db/domain/amounts/mass.ts'
import { SEEDS } from '../../builders/domain-values.ts'

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
  expect(massInWords(milligrams(mg))).toBe(words)
})

test('three decimals get a fourth where the text is to be typed', () => {
  expect(massToType(milligrams(31_187))).toBe('31.1870 g')
  expect(massToType(milligrams(1_235_000))).toBe('1.2350 kg')
  expect(massToType(milligrams(12_500))).toBe('12.5 g')
})

test('a count names its unit, one and many, with commas between thousands', () => {
  expect(countInWords(1, SEEDS)).toBe('1 seed')
  expect(countInWords(0, SEEDS)).toBe('0 seeds')
  expect(countInWords(1_240, { one: 'cluster', many: 'clusters' })).toBe('1,240 clusters')
  expect(grouped(1_234_567)).toBe('1,234,567')
  expect(grouped(999)).toBe('999')
  expect(grouped(-1_234)).toBe('-1,234')
})

test.each([
  [1_237, 0, '1,237'],
  [1_237, 0.04, 'about 1,240'],
  [1_237, 0.1, 'about 1,240'],
  [1_237, 0.2, 'about 1,200'],
  [9_996, 0.04, 'about 10,000'],
  [183, 0.2, 'about 180'],
  [19, 0.3, 'about 19'],
  [12, 0.04, '12'],
  [12, 0.042, 'about 12'],
  [0, 0.9, '0'],
])('%s seeds with a doubt of %s are %s', (count, doubt, words) => {
  expect(aboutCount(count, doubt)).toBe(words)
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
