import { expect, test } from 'vitest'
import { lotLetter } from '../../../db/domain/numbers/lot-letter.ts'

test.each([
  [1, 'A'],
  [8, 'H'],
  [9, 'J'],
  [14, 'P'],
  [24, 'Z'],
  [25, 'AA'],
  [26, 'AB'],
  [48, 'AZ'],
  [49, 'BA'],
  [600, 'ZZ'],
  [601, 'AAA'],
])('lot %s is %s', (ordinal, letter) => {
  expect(lotLetter(ordinal)).toBe(letter)
})

test.each([0, -1, 1.5, Number.NaN])('there is no lot %s', (ordinal) => {
  expect(() => lotLetter(ordinal)).toThrow(RangeError)
})

test('letters are unique, in order, and never I or O', () => {
  const letters = Array.from({ length: 15_000 }, (_, index) => lotLetter(index + 1))
  expect(new Set(letters).size).toBe(letters.length)
  expect(letters.join('')).not.toMatch(/[IO]/)
  const inOrder = letters.toSorted((a, b) => a.length - b.length || (a < b ? -1 : 1))
  expect(letters).toEqual(inOrder)
})
