import { describe, expect, it, test } from 'vitest'
import { yearsOfMany, yearsTold } from '../../../db/domain/viability/years-ahead.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

describe('years until a lot is below its threshold, in words', () => {
  test.each([
    [0, 0, 0.4, 'below it already'],
    [0, 0, 3, 'probably below it already, 3 years at most'],
    [1.14, 3.21, 8.96, 'about 3.2 years, between 1.1 and 9 years'],
    [0.6, 1, 12.4, 'about 1 year, between 0.6 and 12 years'],
    [20, 90, 300, 'about 90 years, between 20 and more than 200 years'],
    [0, 1.1, 11, 'about 1.1 years, between now and 11 years'],
    [0, 0.13, 4, 'less than half a year, 4 years at most'],
    [40, 201, 900, 'more than 200 years'],
  ])('%d, %d, %d: %s', (low, middle, high, words) => {
    expect(saidInEnglish(yearsTold({ low, middle, high }))).toBe(words)
  })
})

describe('the years of many lots', () => {
  const lot = (middle: number) => ({ low: middle / 2, middle, high: middle * 2 })

  it('are those of the middle lot of those above, with what is below already and what will be within five years', () => {
    expect(yearsOfMany([lot(5), lot(0), lot(40), lot(5.1), lot(0)])).toEqual({
      half: lot(5.1),
      already: 2,
      soon: 1,
    })
  })

  it('of an even number are those by which half of them are below', () => {
    expect(yearsOfMany([lot(8), lot(2), lot(30), lot(4)]).half).toEqual(lot(4))
  })

  it('are none where all are below', () => {
    expect(yearsOfMany([lot(0)])).toEqual({ half: null, already: 1, soon: 0 })
  })
})
