import { describe, expect, test } from 'vitest'
import {
  breakInWords,
  freezingCautionOfMany,
  freezingCautions,
  moistureAdvice,
  moistureInWords,
} from '../../../db/domain/moisture/moisture-words.ts'

const found = (low: number, high = low) => ({ percent: (low + high) / 2, low, high })
const MOULD = 'Do not close it in airtight above about 10 % (common practice): it can go mouldy.'
const tooMoist = (percent: string) =>
  `Too moist to freeze: it may hold up to ${percent} % water. Frost can kill it: dry it to 8 % or less first.`

test('a moisture is one figure to a tenth, or a span where it is coarse', () => {
  expect(moistureInWords(found(7.24))).toBe('7.2 %')
  expect(moistureInWords({ percent: 7, low: 6.98, high: 7.02 })).toBe('7 %')
  expect(moistureInWords({ percent: 7, low: 6.9, high: 7.1 })).toBe('about 7 %, between 6.9 and 7.1 %')
  expect(moistureInWords({ percent: 7, low: 7, high: 7.0625 })).toBe('about 7 %, between 7 and 7.1 %')
})

test('what seed shows in the hand has its words', () => {
  expect((['breaks', 'bends', 'soft'] as const).map(breakInWords)).toEqual([
    'snaps or shatters',
    'bends or flattens',
    'takes a thumbnail',
  ])
})

describe('frost', () => {
  test('is no danger to seed of 8 % or less, and is told of moister and of unmeasured seed', () => {
    expect(freezingCautions(8)).toEqual([])
    expect(freezingCautions(8.1)).toEqual([tooMoist('8.1')])
    expect(freezingCautions(13.26)).toEqual([tooMoist('13.3')])
    expect(freezingCautions(null)).toEqual([
      'Measure its moisture first: frost can kill seed above about 8 %.',
    ])
  })

  test.each([
    [0, 5, ''],
    [1, 1, 'The lot is'],
    [3, 3, 'All 3 are'],
    [1, 3, '1 of the 3 is'],
    [2, 3, '2 of the 3 are'],
  ])('for %i of %i lots is told once', (cautioned, lots, who) => {
    const rest = ' too moist to freeze or not measured yet. Frost can kill seed above about 8 %.'
    expect(freezingCautionOfMany(cautioned, lots)).toBe(who === '' ? '' : who + rest)
  })
})

test('the highest that a moisture may be says what to do with the seed', () => {
  const dry = ['Dry enough for an airtight jar and for the freezer.']
  expect(moistureAdvice(found(4, 8))).toEqual(dry)
  expect(moistureAdvice(found(4, 8.5))).toEqual([tooMoist('8.5')])
  expect(moistureAdvice(found(10))).toEqual([tooMoist('10')])
  expect(moistureAdvice(found(8, 10.5))).toEqual([MOULD, tooMoist('10.5')])
})
