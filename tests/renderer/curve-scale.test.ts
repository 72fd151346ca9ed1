import { describe, expect, test } from 'vitest'
import type { LotForecast } from '../../db/contract/care-operations.ts'
import type { Told } from '../../db/contract/told.ts'
import { isoDate } from '../../db/domain/dates/iso-date.ts'
import { curveScale, outlines } from '../../renderer/screens/shelf/outlook/curve-scale.ts'

const WORDS = 'words' as Told

function forecast(start: string, until: string): LotForecast {
  const point = (on: string, middle: number) => ({
    on: isoDate(on),
    low: middle - 0.1,
    middle,
    high: middle + 0.05,
  })
  return {
    kind: 'forecast',
    on: isoDate(start),
    start: isoDate(start),
    alive: { low: 0, middle: 0, high: 0 },
    aliveWords: WORDS,
    threshold: 0.85,
    thresholdWords: WORDS,
    line: 0.85,
    crossing: { early: null, middle: null, late: null },
    crossingWords: WORDS,
    chanceBelow: 0,
    curve: [point(start, 0.9), point(until, 0.4)],
    tests: [],
    howSure: [],
    basis: { words: WORDS, source: WORDS, confidence: WORDS, note: WORDS },
    places: [],
  }
}

describe('the scale of the curve', () => {
  test('spans the field from the first day to the last, all at the top', () => {
    const { x, y, field } = curveScale(forecast('2020-10-01', '2030-10-01'))
    expect([x('2020-10-01'), x('2030-10-01')]).toEqual([field.left, field.right])
    expect([y(0), y(1)]).toEqual([field.bottom, field.top])
    expect(x('2025-10-01')).toBeCloseTo((field.left + field.right) / 2, 0)
  })
  test.each([
    ['2025-10-01', '2028-10-01', ['2026', '2027', '2028']],
    ['2020-10-01', '2030-10-01', ['2022', '2024', '2026', '2028', '2030']],
    ['1998-10-01', '2056-10-01', ['2000', '2010', '2020', '2030', '2040', '2050']],
    ['2026-03-14', '2026-12-01', []],
  ])('from %s to %s writes the years %j', (from, until, years) => {
    expect(curveScale(forecast(from, until)).years.map((day) => day.slice(0, 4))).toEqual(years)
  })
  test('the band goes out along its upper edge and back along its lower', () => {
    const shown = forecast('2020-10-01', '2030-10-01')
    const { band, middle } = outlines(shown, curveScale(shown))
    expect(band.split(/[ML]/).slice(1)).toHaveLength(4)
    expect(band.endsWith('Z')).toBe(true)
    expect(middle.split(/[ML]/).slice(1)).toHaveLength(2)
  })
})
