import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { plainCharacters, readNumber } from '../../../db/domain/amounts/read-number.ts'

describe('numbers that can be meant one way only', () => {
  test.each([
    ['12', 12],
    ['0', 0],
    ['007', 7],
    ['12.5', 12.5],
    ['12,5', 12.5],
    ['.5', 0.5],
    [',25', 0.25],
    ['0.234', 0.234],
    ['0,234', 0.234],
    ['1.2340', 1.234],
    ['1234.567', 1234.567],
    ['12 500', 12_500],
    ['12\u00a0500', 12_500],
    ['12\u202f500', 12_500],
    ["1'200", 1_200],
    ['1’200,5', 1_200.5],
    ['1 234 567', 1_234_567],
    ['1 234.567', 1_234.567],
    ['1,234.5', 1_234.5],
    ['1.234,5', 1_234.5],
    ['1,234,567', 1_234_567],
    ['1.234.567', 1_234_567],
    ['1.234.567,89', 1_234_567.89],
    ['1,00,000', 100_000],
    ['12,34,567.25', 1_234_567.25],
    ['1/2', 0.5],
    ['3 / 4', 0.75],
    ['1 1/2', 1.5],
    ['9/8', 1.125],
    ['3/1', 3],
    ['½', 0.5],
    ['1½', 1.5],
    ['2 ¾', 2.75],
    ['１２．５', 12.5],
  ])('%s', (typed, value) => {
    expect(readNumber(typed)).toEqual({ kind: 'number', value })
  })
})

describe('one mark before three digits can group or divide', () => {
  test.each([
    ['1,234', 1_234, 1.234],
    ['1.234', 1_234, 1.234],
    ['999.000', 999_000, 999],
    ['12,500', 12_500, 12.5],
  ])('%s', (typed, grouped, decimal) => {
    expect(readNumber(typed)).toEqual({ kind: 'ask', grouped, decimal })
  })
})

describe('what is no number', () => {
  test.each([
    '',
    ' ',
    'twelve',
    'NaN',
    'Infinity',
    '1e3',
    '0x10',
    '-1',
    '+1',
    '1..5',
    '1.2.3',
    '1,0,000',
    '100,00,000',
    '1,00.000',
    '0.123.456',
    '0.123,5',
    '1.234,567.8',
    '1,234,5',
    '1.234.56',
    '1234 567',
    '1 234567',
    '1 23',
    "1'234 567",
    '12.',
    '1/0',
    '1 3/2',
    '1 2/2',
    '1/2/3',
    '1.5/2',
    '10²',
    '①',
    '٣',
    '9'.repeat(400),
  ])('%s', (typed) => {
    expect(readNumber(typed)).toEqual({ kind: 'unreadable' })
  })
})

test('every whole number reads as itself, plain or grouped by spaces or marks', () => {
  fc.assert(
    fc.property(fc.nat(2_000_000_000), fc.constantFrom(' ', "'", '’', '\u00a0'), (value, mark) => {
      const grouped = String(value).replace(/\B(?=(\d{3})+$)/g, mark)
      expect(readNumber(String(value))).toEqual({ kind: 'number', value })
      expect(readNumber(grouped)).toEqual({ kind: 'number', value })
    }),
  )
})

test('comma and point mean the same', () => {
  const digits = fc.string({ unit: fc.constantFrom(...'0123456789.,'), maxLength: 12 })
  fc.assert(
    fc.property(digits, (typed) => {
      const swapped = typed.replace(/[.,]/g, (mark) => (mark === '.' ? ',' : '.'))
      expect(readNumber(swapped)).toEqual(readNumber(typed))
    }),
    { numRuns: 2_000 },
  )
})

test('whatever is typed, a number that is read is finite and not negative', () => {
  const typed = fc.oneof(
    fc.string({ unit: 'grapheme' }),
    fc.string({ unit: fc.constantFrom(..."0123456789.,' /½") }),
  )
  fc.assert(
    fc.property(typed, (text) => {
      const reading = readNumber(text)
      const values =
        reading.kind === 'number'
          ? [reading.value]
          : reading.kind === 'ask'
            ? [reading.grouped, reading.decimal]
            : []
      expect(values.every((value) => Number.isFinite(value) && value >= 0)).toBe(true)
    }),
    { numRuns: 2_000 },
  )
})

test('plain characters: fractions and wide digits are spelled, raised and circled digits are not', () => {
  expect(plainCharacters('1½ oz')).toBe('1 1/2 oz')
  expect(plainCharacters('⅓')).toBe(' 1/3')
  expect(plainCharacters('１２ｇ')).toBe('12g')
  expect(plainCharacters('５㎎')).toBe('5mg')
  expect(plainCharacters('10² ①')).toBe('10² ①')
})
