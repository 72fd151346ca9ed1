import { describe, expect, test } from 'vitest'
import { daysBetween } from '../../../db/domain/dates/day-arithmetic.ts'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { type Ageing, forecastOf } from '../../../db/domain/viability/forecast.ts'
import { paceModelOf } from '../../../db/domain/viability/pace-model.ts'
import { priorOf } from '../../../db/domain/viability/prior.ts'
import { aliveTold, crossingTold, howSure as howSureTold } from '../../../db/domain/viability/words.ts'
import { constantsOf } from '../../builders/crop-table.ts'
import { saidInEnglish } from '../../builders/in-english.ts'

const TODAY = isoDate('2026-03-14')
const absolute = { part: 0.85, of: 'all-seeds' } as const
const on = (day: string | null) => (day === null ? null : isoDate(day))
const howSure = (...of: Parameters<typeof howSureTold>) => howSureTold(...of).map(saidInEnglish)
const crossing = (early: string | null, middle: string | null, late: string | null) => ({
  early: on(early),
  middle: on(middle),
  late: on(late),
})

test('the part alive is told with its band', () => {
  expect(saidInEnglish(aliveTold({ low: 0.694, middle: 0.838, high: 0.936 }, TODAY))).toBe(
    'About 84 % alive, between 69 % and 94 %, on 14 Mar 2026.',
  )
})

describe('the crossing is told as far as it is known', () => {
  test.each([
    [
      crossing('2028-01-01', '2031-06-01', '2040-01-01'),
      'It will be too weak (below 85 %) from about 2031, between 2028 and 2040.',
    ],
    [
      crossing('2025-01-01', '2031-06-01', null),
      'It will be too weak (below 85 %) from about 2031, between now and more than a lifetime.',
    ],
    [
      crossing('2024-01-01', '2025-06-01', '2029-01-01'),
      'It is probably below 85 % already, but may hold until 2029.',
    ],
    [crossing('2020-01-01', '2021-01-01', '2022-01-01'), 'It is almost surely below 85 % already.'],
    [crossing('2020-01-01', '2021-01-01', '2026-03-14'), 'It is almost surely below 85 % already.'],
    [crossing('2020-01-01', '2026-03-14', null), 'It is probably below 85 % already.'],
    [
      crossing('2026-03-14', '2031-06-01', '2040-01-01'),
      'It will be too weak (below 85 %) from about 2031, between now and 2040.',
    ],
    [
      crossing('2090-01-01', null, null),
      'It stays above 85 % for more than 200 years, as far as anyone can tell.',
    ],
  ])('%j', (dates, words) => {
    expect(saidInEnglish(crossingTold(dates, absolute, TODAY))).toBe(words)
  })
  test('and says where it is a part of the start', () => {
    const dates = crossing('2020-01-01', '2021-01-01', '2022-01-01')
    expect(saidInEnglish(crossingTold(dates, { part: 0.85, of: 'the-start' }, TODAY))).toBe(
      'It is almost surely below 85 % of its start already.',
    )
  })
})

describe('how sure it is', () => {
  const start = isoDate('2024-10-01')
  const ageing: Ageing = {
    start,
    dailyAhead: 0.0005,
    lostOn: (day) => 0.0005 * daysBetween(start, day),
  }
  const prior = priorOf({
    leastSold: 0.75,
    basis: 'rule-of-thumb',
    keepingMeasured: false,
    extrapolates: 'nowhere',
    logPaceByYears: null,
  })
  const told = (
    cropId: string,
    tests: Parameters<typeof forecastOf>[1],
    yearsWeighedIn: readonly [number, number] | null = null,
  ) => {
    const model = paceModelOf({
      cropId,
      constants: constantsOf(cropId),
      oil: 0.02,
      years: [3, 4],
      leastSold: 0.75,
    })
    if (model === null) throw new Error(`No model of ${cropId}`)
    return howSure(
      forecastOf(prior, tests, ageing, absolute, TODAY),
      model,
      { harvest: false, keeping: false, usualDays: false, yearsWeighedIn, merged: null },
      ['colder-than-known'],
    )
  }
  test('untested seed of a crop with constants: what is assumed, what is beyond them, what is wrong with them', () => {
    expect(told('maize', [])).toEqual([
      expect.stringMatching(/^Not tested yet/),
      expect.stringMatching(/^Its harvest year is not known/),
      expect.stringMatching(/^Its moisture, or the climate/),
      expect.stringMatching(/^Some of the time it was colder/),
      expect.stringMatching(/^The equation is known to promise too much/),
    ])
  })
  test('a crop without constants is a rule of thumb, and a dormant test is named', () => {
    const sentences = told('tomato', [
      { on: isoDate('2025-01-10'), tested: 100, sprouted: 40 },
      { on: isoDate('2026-01-10'), tested: 100, sprouted: 90 },
    ])
    expect(sentences[0]).toBe('It is based on one test of the lot.')
    expect(sentences[1]).toMatch(/^The test of 10 Jan 2025, 40 of 100, does not count/)
    expect(sentences.at(-1)).toMatch(/^No constants are published for this crop, and none are borrowed/)
  })
  test('years that were weighed in beside the constants are named as a rule of thumb', () => {
    expect(told('maize', [], [2, 5])).toContain(
      'Neither was measured. So the 2 to 5 years that its seed is said to keep count beside the equation: a rule of thumb, so the band is wide.',
    )
    expect(told('soybean', [], [2, 2]).join(' ')).toContain('the 2 years that its seed is said to keep')
  })
  test('lots that were poured together are named, and which of them is told', () => {
    const model = paceModelOf({
      cropId: 'bean',
      constants: constantsOf('bean'),
      oil: 0.02,
      years: [3, 4],
      leastSold: 0.7,
    })
    if (model === null) throw new Error('No model of bean')
    const merged = { numbers: ['HL-A', 'HL-B', 'HL-C'], weakest: 'HL-B' }
    const known = { harvest: true, keeping: true, usualDays: false, yearsWeighedIn: null, merged }
    expect(howSure(forecastOf(prior, [], ageing, absolute, TODAY), model, known, [])[1]).toBe(
      'HL-A, HL-B and HL-C were poured together. The forecast is that of the weakest, HL-B, so more of it may be alive. A test of the whole would tell.',
    )
  })
  test('constants from memory are called so, constants that were seen are not', () => {
    expect(told('pea', [])).toContain(
      'The constants of its crop were written down from memory and not checked in their source, so the band is wider.',
    )
    expect(told('maize', []).join(' ')).not.toContain('from memory')
  })
  test('bean below the turn of its curve: where it turns, what is done, and which way that is wrong', () => {
    expect(told('bean', [])).toContain(
      'Some of the time it was colder than -3.6 °C. Below that its constants would let colder seed die sooner, so that time counts as no colder. It may well last longer than told here.',
    )
    expect(told('maize', []).join(' ')).toContain('it was colder than the figures go')
  })
  test('seed beyond what was fitted is told what was', () => {
    const model = paceModelOf({
      cropId: 'bean',
      constants: constantsOf('bean'),
      oil: 0.02,
      years: [3, 4],
      leastSold: 0.7,
    })
    if (model === null) throw new Error('No model of bean')
    const known = { harvest: true, keeping: true, usualDays: true, yearsWeighedIn: null, merged: null }
    const remarks = [
      'drier-than-fitted',
      'moister-than-fitted',
      'colder-than-fitted',
      'warmer-than-fitted',
    ] as const
    const said = howSure(forecastOf(prior, [], ageing, absolute, TODAY), model, known, remarks)
    expect(said).toContain(
      'Days without readings, past and to come, count as a usual day of the place. A week in which something failed counts once, with its own days.',
    )
    expect(said.filter((sentence) => sentence.endsWith('this goes beyond what was measured.'))).toEqual([
      'It is drier than the seed that the figures come from, 12 to 24 %: this goes beyond what was measured.',
      'It is moister than the seed that the figures come from, 12 to 24 %: this goes beyond what was measured.',
      'It was colder than the seed that the figures come from, 20 to 60 °C: this goes beyond what was measured.',
      'It was warmer than the seed that the figures come from, 20 to 60 °C: this goes beyond what was measured.',
    ])
  })
  test('of a crop without figures the same is told without them', () => {
    const model = paceModelOf({
      cropId: 'tomato',
      constants: constantsOf('tomato'),
      oil: 0.02,
      years: [3, 4],
      leastSold: 0.7,
    })
    if (model === null) throw new Error('No model of tomato')
    const known = { harvest: true, keeping: true, usualDays: false, yearsWeighedIn: null, merged: null }
    const tests = [
      { on: isoDate('2025-01-10'), tested: 100, sprouted: 95 },
      { on: isoDate('2025-01-11'), tested: 100, sprouted: 30 },
    ]
    const remarks = [
      'drier-than-helps',
      'drier-than-fitted',
      'colder-than-fitted',
      'frozen-unfitted',
    ] as const
    expect(howSure(forecastOf(prior, tests, ageing, absolute, TODAY), model, known, remarks)).toEqual([
      'It is based on 2 tests of the lot.',
      'Its tests do not fit together: something is wrong with one of them. Test again.',
      'Some of the time it was drier than helps. That time counts as no drier than the limit.',
      'It is drier than the seed that the figures come from: this goes beyond what was measured.',
      'It was colder than the seed that the figures come from: this goes beyond what was measured.',
      'Seed kept frozen for thirty years did worse than the equation says (PMC7285074), so the band is wider.',
      expect.stringMatching(/^No constants are published for this crop/),
    ])
  })
  test('nothing is forecast where neither constants nor years are known', () => {
    expect(
      paceModelOf({
        cropId: 'tomato',
        constants: constantsOf('tomato'),
        oil: null,
        years: null,
        leastSold: 0.5,
      }),
    ).toBeNull()
  })
})
