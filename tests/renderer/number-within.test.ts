import { expect, it } from 'vitest'
import { numberWithin } from '../../renderer/shared/card-form/whole-number.ts'

it.each([
  ['5', 5],
  ['100', 100],
  ['72,5 %', 72.5],
  ['4.9', null],
  ['100.5', null],
  ['', null],
  ['most', null],
])('reads ‘%s’ between 5 and 100 as %s', (typed, read) => {
  expect(numberWithin(typed, 5, 100)).toBe(read)
})
