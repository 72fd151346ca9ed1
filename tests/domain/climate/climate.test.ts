import { describe, expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import { climateTotals, seasonOf } from '../../../db/domain/climate/climate-sum.ts'
import { beyond, hasLimits, limitsOf } from '../../../db/domain/climate/limits.ts'
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
import { inEnglish } from '../../builders/in-english.ts'

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
    [70, 20, { tooWarm: false, tooDamp: false }],
    [30, 69, { tooWarm: false, tooDamp: false }],
    [50, 50, { tooWarm: false, tooDamp: false }],
    [50, 50.5, { tooWarm: false, tooDamp: true }],
    [50.2, 50, { tooWarm: true, tooDamp: false }],
  ])('of %s F and %s percent by the sum', (f, percent, expected) => {
    expect(beyond(reading(f, percent), short)).toEqual(expected)
  })

  test('the keeper’s own limits count beside the sum, and in place of an aim’s', () => {
    const own = { highestCc: 1_200, highestPm: 450 }
    expect(beyond(reading(55, 40), limitsOf('short-term', own))).toEqual({ tooWarm: true, tooDamp: false })
    expect(limitsOf('long-term', own)).toEqual({ highestCc: 1_200, highestPm: 450, highestSum: null })
    expect(beyond(reading(40, 46), limitsOf('none', own))).toEqual({ tooWarm: false, tooDamp: true })
  })

  test('a limit itself is still kept to, and humidity that nobody read is not too damp', () => {
    const own = limitsOf('none', { highestCc: 1_200, highestPm: 450 })
    const at = (temperatureCc: number, humidityPm: number | null) =>
      beyond({ at: '2026-01-01T00:00', temperatureCc, humidityPm }, own)
    expect(at(1_200, 450)).toEqual({ tooWarm: false, tooDamp: false })
    expect(at(1_201, 451)).toEqual({ tooWarm: true, tooDamp: true })
    expect(at(1_200, null)).toEqual({ tooWarm: false, tooDamp: false })
    const belowNothing = limitsOf('none', { highestCc: null, highestPm: -1 })
    expect(beyond({ at: '2026-01-01T00:00', temperatureCc: 0, humidityPm: null }, belowNothing).tooDamp).toBe(
      false,
    )
  })

  test('a cool and damp place is within a limit of temperature alone', () => {
    expect(beyond(reading(49, 90), limitsOf('medium-term', NO_OWN))).toEqual({
      tooWarm: false,
      tooDamp: false,
    })
  })

  test.each([
    ['short-term', NO_OWN, true],
    ['medium-term', NO_OWN, true],
    ['none', NO_OWN, false],
    ['none', { highestCc: null, highestPm: 450 }, true],
    ['none', { highestCc: 1_200, highestPm: null }, true],
  ] as const)('%s with %j of its own has something to keep to: %s', (aim, own, expected) => {
    expect(hasLimits(limitsOf(aim, own))).toBe(expected)
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

  test('comes with the lowest and the highest, wherever they stand', () => {
    const readings = [
      at('00:00', 20, 50),
      at('01:00', 28, 40),
      at('02:00', 12, 65),
      at('03:00', 21),
      at('04:30', 18, 30),
    ]
    expect(climateTotals(readings, limitsOf('none', NO_OWN))).toMatchObject({
      readings: 5,
      from: '2026-01-01T00:00',
      until: '2026-01-01T04:30',
      lowestCc: 1_200,
      highestCc: 2_800,
      highestPm: 650,
      shareOutside: null,
    })
    const frosty = [at('00:00', -20), at('01:00', -18), at('02:00', -19)]
    expect(climateTotals(frosty, limitsOf('long-term', NO_OWN))).toMatchObject({
      lowestCc: -2_000,
      highestCc: -1_800,
      highestPm: null,
      shareOutside: 0,
    })
  })

  test('belongs to a quarter that begins with December', () => {
    expect(
      [1, 2, 3, 5, 6, 8, 9, 11, 12].map((month) =>
        seasonOf({ ...at('00:00', 1), at: `2026-${String(month).padStart(2, '0')}-01T00:00` }),
      ),
    ).toEqual([
      'dec-feb',
      'dec-feb',
      'mar-may',
      'mar-may',
      'jun-aug',
      'jun-aug',
      'sep-nov',
      'sep-nov',
      'dec-feb',
    ])
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

  test('the longest spell comes first, and damp hours are counted as hours', () => {
    const damp = series(48, 60, (hour) => ({
      celsius: 8,
      percent: hour < 3 || (hour > 9 && hour < 20) ? 70 : 40,
    }))
    const { tooDampHours, tooWarmHours, spells } = timeOutside(damp, limitsOf('short-term', NO_OWN))
    expect({ tooDampHours, tooWarmHours }).toEqual({ tooDampHours: 13, tooWarmHours: 0 })
    expect(spells.map(({ hours }) => hours)).toEqual([10, 3])
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

  /** A freezer at -18 °C that warms to `peaks` at those minutes, each for twenty minutes: read every ten. */
  const withPeaks = (minutes: readonly number[], { celsius = -9, lasts = 20 } = {}) =>
    series(1_000, 10, (index) => ({
      celsius: minutes.some((from) => index * 10 >= from && index * 10 < from + lasts) ? celsius : -18,
    }))

  test('is seen by four peaks and not by three', () => {
    expect(thawCycles(withPeaks([600, 1_320, 2_040, 2_760]))).toEqual({
      peaks: 4,
      everyHours: 12,
      riseCc: 900,
    })
    expect(thawCycles(withPeaks([600, 1_320, 2_040]))).toBeNull()
  })

  test('warms by more than three degrees for three hours at most', () => {
    const at = [600, 1_320, 2_040, 2_760, 3_480]
    expect(thawCycles(withPeaks(at, { celsius: -15 }))).toBeNull()
    expect(thawCycles(withPeaks(at, { celsius: -14.9 }))).toMatchObject({ riseCc: 310 })
    expect(thawCycles(withPeaks(at, { lasts: 180 }))).toMatchObject({ peaks: 5 })
    expect(thawCycles(withPeaks(at, { lasts: 190 }))).toBeNull()
  })

  test('rises as high as the highest reading of its peaks, which is also when they are', () => {
    const sharp = series(1_000, 10, (index) => ({ celsius: [-12, -8, -13][(index % 72) - 30] ?? -18 }))
    expect(thawCycles(sharp)).toMatchObject({ everyHours: 12, riseCc: 1_000 })
  })

  test('comes back with an unevenness of a third at most', () => {
    const uneven = (off: number) => withPeaks([600, 900, 1_800 - off, 2_700 - off, 3_600, 5_100])
    expect(thawCycles(uneven(310))).toMatchObject({ peaks: 6, everyHours: 15 })
    expect(thawCycles(uneven(320))).toBeNull()
  })

  test('is read every half hour or more often, and freezes', () => {
    const every = (minutes: number, usual: number) =>
      thawCycles(series(400, minutes, (index) => ({ celsius: index % 24 === 5 ? usual + 9 : usual })))
    expect(every(30, -18)).toMatchObject({ everyHours: 12 })
    expect(every(31, -18)).toBeNull()
    expect(every(30, 0)).toBeNull()
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
    ['one reading', series(1, 10, () => ({ celsius: -18 }))],
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
    expect(inEnglish<Told>(stateInWords(state(celsius, percent), limits, lately))).toBe(words)
  })

  test('a door opened for an hour in two days is borne', () => {
    const readings = series(48, 60, (hour) => ({ celsius: hour === 5 ? 30 : 8, percent: 40 }))
    expect(placeState(readings, limits, lately, today)).toBe('good')
  })

  test('of a first reading alone is that of the reading', () => {
    const first = (celsius: number, percent: number) =>
      placeState(
        series(1, 60, () => ({ celsius, percent })),
        limits,
        lately,
        today,
      )
    expect([first(24, 40), first(8, 70), first(8, 40)]).toEqual(['too-warm', 'too-damp', 'good'])
  })

  test('is judged by more than one part in twenty of the time', () => {
    const warm = (hours: number) =>
      series(40, 60, (hour) => ({ celsius: hour < hours ? 24 : 8, percent: 40 }))
    const damp = (hours: number) =>
      series(40, 60, (hour) => ({ celsius: 8, percent: hour < hours ? 70 : 40 }))
    const states = [warm(2), warm(3), damp(2), damp(3)].map((readings) =>
      placeState(readings, limits, lately, today),
    )
    expect(states).toEqual(['good', 'too-warm', 'good', 'too-damp'])
  })

  test('that is good is only cold enough where humidity does not count', () => {
    const good = (own: { highestCc: number | null; highestPm: number | null }) =>
      inEnglish<Told>(stateInWords('good', limitsOf('long-term', own), today))
    expect(good(NO_OWN)).toBe('cold enough')
    expect(good({ highestCc: null, highestPm: 150 })).toBe('dry and cool enough')
  })

  test('nothing read, nothing lately and nothing to keep to', () => {
    expect(placeState([], limits, addDays(today, -60), today)).toBe('good')
    expect(placeState([], limits, null, today)).toBe('no-readings')
    expect(placeState([], limits, addDays(today, -61), today)).toBe('stale')
    expect(placeState([], limitsOf('none', NO_OWN), today, today)).toBe('no-aim')
    expect(inEnglish<Told>(stateInWords('stale', limits, addDays(today, -61)))).toBe(
      'no readings since 2 Dec 2025',
    )
    expect(inEnglish<Told>(stateInWords('no-readings', limits, null))).toBe('no readings yet')
    expect(inEnglish<Told>(stateInWords('no-aim', limits, today))).toBe('readings, but no limits set yet')
  })
})
