import { describe, expect, test } from 'vitest'
import { climateTotals } from '../../../db/domain/climate/climate-sum.ts'
import { beyond, limitsOf } from '../../../db/domain/climate/limits.ts'
import { placeState, stateInWords } from '../../../db/domain/climate/place-state.ts'
import {
  type ClimateReading,
  fromFahrenheit,
  minuteOf,
  wallClock,
} from '../../../db/domain/climate/reading.ts'
import { thawCycles } from '../../../db/domain/climate/thaw-cycles.ts'
import { timeOutside } from '../../../db/domain/climate/time-outside.ts'
import { addDays } from '../../../db/domain/dates/day-arithmetic.ts'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'

const NO_OWN = { highestCc: null, highestPm: null }
const START = minuteOf('2026-01-10T00:00')

/** Readings from a start on, so many minutes apart. */
function series(
  count: number,
  minutes: number,
  of: (index: number) => { celsius: number; percent?: number },
): ClimateReading[] {
  return Array.from({ length: count }, (_, index) => {
    const { celsius, percent } = of(index)
    return {
      at: wallClock(START + index * minutes),
      temperatureCc: Math.round(100 * celsius),
      humidityPm: percent === undefined ? null : Math.round(10 * percent),
    }
  })
}

describe('a reading against limits', () => {
  const short = limitsOf('short-term', NO_OWN)
  const reading = (f: number, percent: number | null) => ({
    at: '2026-01-01T00:00',
    temperatureCc: fromFahrenheit(f),
    humidityPm: percent === null ? null : percent * 10,
  })

  test.each([
    [50, 49.9, { tooWarm: false, tooDamp: false }],
    [70, 35, { tooWarm: true, tooDamp: false }],
    [45, 60, { tooWarm: false, tooDamp: true }],
    [72, 60, { tooWarm: true, tooDamp: true }],
    [95, null, { tooWarm: false, tooDamp: false }],
  ])('of %s F and %s percent by the sum', (f, percent, expected) => {
    expect(beyond(reading(f, percent), short)).toEqual(expected)
  })

  test('the keeper’s own limits count beside the sum, and in place of an aim’s', () => {
    const own = { highestCc: 1_200, highestPm: 450 }
    expect(beyond(reading(55, 40), limitsOf('short-term', own))).toEqual({ tooWarm: true, tooDamp: false })
    expect(limitsOf('long-term', own)).toEqual({ highestCc: 1_200, highestPm: 450, highestSum: null })
    expect(beyond(reading(40, 46), limitsOf('none', own))).toEqual({ tooWarm: false, tooDamp: true })
  })
})

describe('the mean of readings', () => {
  const at = (hour: string, celsius: number, percent: number | null = null) => ({
    at: `2026-01-01T${hour}`,
    temperatureCc: 100 * celsius,
    humidityPm: percent === null ? null : 10 * percent,
  })

  test('is of the time, not of the readings: a busy hour counts as an hour', () => {
    const busy = Array.from({ length: 60 }, (_, minute) =>
      at(`00:${String(minute).padStart(2, '0')}`, 30, 80),
    )
    const totals = climateTotals(
      [...busy, at('01:00', 10, 40), at('12:00', 10, 40)],
      limitsOf('none', NO_OWN),
    )
    // 1 h at 30 C and 80 %, 22 h at 10 C and 40 %: the last reading stands for as long as the one before it.
    expect(totals?.meanCc).toBeCloseTo((3_000 + 22 * 1_000) / 23, 9)
    expect(totals?.meanPm).toBeCloseTo((800 + 22 * 400) / 23, 9)
    expect(totals?.meanSum).toBeCloseTo((86 + 80 + 22 * (50 + 40)) / 23, 9)
  })

  test('counts a reading for a day and two hours at most', () => {
    const gap = [
      { at: '2026-01-01T00:00', temperatureCc: 2_000, humidityPm: null },
      { at: '2026-03-01T00:00', temperatureCc: 0, humidityPm: null },
      { at: '2026-03-02T00:00', temperatureCc: 0, humidityPm: null },
    ]
    expect(climateTotals(gap, limitsOf('none', NO_OWN))?.meanCc).toBeCloseTo((26 * 2_000) / (26 + 24 + 24), 9)
  })

  test('of one reading is that reading, and of none there is none', () => {
    expect(climateTotals([at('12:00', 21, 55)], limitsOf('none', NO_OWN))).toMatchObject({
      meanCc: 2_100,
      meanPm: 550,
    })
    expect(climateTotals([at('12:00', 21)], limitsOf('none', NO_OWN))).toMatchObject({
      meanPm: null,
      meanSum: null,
    })
    expect(climateTotals([], limitsOf('none', NO_OWN))).toBeNull()
  })
})

describe('time outside', () => {
  const limits = limitsOf('long-term', NO_OWN)

  test('is counted by how long each reading stands', () => {
    const week = series(7 * 24, 60, (hour) => ({ celsius: hour >= 48 && hour < 72 ? 4 : -18 }))
    const outside = timeOutside(week, limits)
    expect(outside).toMatchObject({ measuredHours: 168, outsideHours: 24, tooWarmHours: 24, tooDampHours: 0 })
    expect(outside.share).toBeCloseTo(1 / 7, 9)
    expect(outside.spells).toEqual([
      { from: '2026-01-12T00:00', until: '2026-01-13T00:00', hours: 24, highestCc: 400, highestPm: null },
    ])
  })

  test('a gap of more than a day and two hours was measured by nobody, and ends a spell', () => {
    const readings = [
      { at: '2026-01-01T00:00', temperatureCc: 500, humidityPm: null },
      { at: '2026-01-11T00:00', temperatureCc: 600, humidityPm: null },
      { at: '2026-01-11T12:00', temperatureCc: -1_800, humidityPm: null },
    ]
    const outside = timeOutside(readings, limits)
    expect(outside.measuredHours).toBe(26 + 12 + 12)
    expect(outside.spells.map(({ until, hours }) => [until, hours])).toEqual([
      ['2026-01-01T00:00', 26],
      ['2026-01-11T12:00', 12],
    ])
  })

  test('nothing measured has no share', () => {
    expect(timeOutside([], limits)).toMatchObject({ share: null, spells: [] })
    expect(
      timeOutside(
        series(1, 60, () => ({ celsius: 9 })),
        limits,
      ).share,
    ).toBeNull()
  })

  test('a spell remembers its highest of each', () => {
    const damp = series(4, 60, (hour) => ({ celsius: 20 + hour, percent: 60 - hour }))
    const { spells } = timeOutside(damp, limitsOf('short-term', NO_OWN))
    expect(spells).toMatchObject([{ highestCc: 2_300, highestPm: 600 }])
  })
})

describe('a frost-free freezer', () => {
  const minutesPerDay = 24 * 60
  const frostFree = (days: number, everyHours: number) =>
    series((days * minutesPerDay) / 10, 10, (index) => ({
      celsius: (index * 10) % (everyHours * 60) < 30 && index > 10 ? -9 : -18 + 0.3 * Math.sin(index),
    }))

  test('shows by its peaks, how often and how high', () => {
    const cycles = thawCycles(frostFree(7, 12))
    expect(cycles).toMatchObject({ everyHours: 12 })
    expect(cycles?.peaks).toBeGreaterThanOrEqual(12)
    expect(cycles?.riseCc).toBeGreaterThan(800)
    expect(cycles?.riseCc).toBeLessThan(950)
  })

  test('still shows beside a failed day', () => {
    const readings = frostFree(10, 8).map((reading) =>
      reading.at >= '2026-01-13T00:00' && reading.at < '2026-01-14T00:00'
        ? { ...reading, temperatureCc: 500 }
        : reading,
    )
    expect(thawCycles(readings)).toMatchObject({ everyHours: 8 })
  })

  test.each([
    ['a steady freezer', series(2_000, 10, (index) => ({ celsius: -18 + Math.sin(index / 9) }))],
    ['one long thaw', series(2_000, 10, (index) => ({ celsius: index > 700 && index < 900 ? 6 : -18 }))],
    [
      'a door opened now and then',
      series(2_000, 10, (index) => ({ celsius: [50, 90, 400, 1_300, 1_360].includes(index) ? -8 : -18 })),
    ],
    ['a fridge', series(2_000, 10, (index) => ({ celsius: index % 72 < 3 ? 12 : 5 }))],
    ['a reading each hour', series(400, 60, (index) => ({ celsius: index % 12 === 0 ? -9 : -18 }))],
    ['no readings', []],
  ])('is not seen in %s', (_, readings) => {
    expect(thawCycles(readings)).toBeNull()
  })
})

describe('the state of a place', () => {
  const limits = limitsOf('short-term', NO_OWN)
  const today = isoDate('2026-02-01')
  const lately = isoDate('2026-01-28')
  const state = (celsius: number, percent: number) =>
    placeState(
      series(48, 60, () => ({ celsius, percent })),
      limits,
      lately,
      today,
    )

  test.each([
    [8, 40, 'good', 'dry and cool enough'],
    [24, 40, 'too-warm', 'too warm'],
    [8, 70, 'too-damp', 'too damp'],
    [24, 70, 'too-warm-and-damp', 'too warm and too damp'],
  ])('of %s °C and %s percent', (celsius, percent, expected, words) => {
    expect(state(celsius, percent)).toBe(expected)
    expect(stateInWords(state(celsius, percent), limits, '28 January')).toBe(words)
  })

  test('a door opened for an hour in two days is borne', () => {
    const readings = series(48, 60, (hour) => ({ celsius: hour === 5 ? 30 : 8, percent: 40 }))
    expect(placeState(readings, limits, lately, today)).toBe('good')
  })

  test('nothing read, nothing lately and nothing to keep to', () => {
    expect(placeState([], limits, null, today)).toBe('no-readings')
    expect(placeState([], limits, addDays(today, -61), today)).toBe('stale')
    expect(placeState([], limitsOf('none', NO_OWN), today, today)).toBe('no-aim')
    expect(stateInWords('stale', limits, '2 December')).toBe('no readings since 2 December')
    expect(stateInWords('no-readings', limits, '')).toBe('no readings yet')
    expect(stateInWords('no-aim', limits, '')).toBe('readings, but nothing to keep to yet')
  })
})
