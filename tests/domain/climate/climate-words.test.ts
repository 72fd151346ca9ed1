import { describe, expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import type { ClimateTotals } from '../../../db/domain/climate/climate-sum.ts'
import {
  airInWords,
  excursionCostInWords,
  limitsInWords,
  thawsInWords,
  totalsInWords,
} from '../../../db/domain/climate/climate-words.ts'
import { type KindChange, kindChangeInWords } from '../../../db/domain/climate/kind-words.ts'
import { limitsOf, PLACE_AIMS } from '../../../db/domain/climate/limits.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { inEnglish } from '../../builders/in-english.ts'

const told = (message: Message) => inEnglish<Told>(message)
const allTold = (messages: readonly Message[]) => messages.map(told)
const NO_OWN = { highestCc: null, highestPm: null }

test('a temperature is told to a tenth of a degree with a true minus, a humidity in whole percent', () => {
  const air = (temperatureCc: number, humidityPm: number | null) =>
    told(airInWords({ temperatureCc, humidityPm }))
  expect([2_144, -1_796, 500, -4, 0].map((cc) => air(cc, null))).toEqual([
    '21.4 °C',
    '−18.0 °C',
    '5.0 °C',
    '0.0 °C',
    '0.0 °C',
  ])
  expect([384, 385, 1_000, 0].map((pm) => air(500, pm))).toEqual([
    '5.0 °C, 38 % humidity',
    '5.0 °C, 39 % humidity',
    '5.0 °C, 100 % humidity',
    '5.0 °C, 0 % humidity',
  ])
})

test('limits are told with what each asks for', () => {
  expect(PLACE_AIMS.map((aim) => told(limitsInWords(limitsOf(aim, NO_OWN))))).toEqual([
    'limits: degrees F and percent of humidity together at most 100 (common practice)',
    'limits: at most 10.0 °C',
    'limits: at most −15.0 °C',
    'no limits set yet',
  ])
  expect(told(limitsInWords(limitsOf('none', { highestCc: 1_200, highestPm: 450 })))).toBe(
    'limits: at most 12.0 °C and at most 45 % humidity',
  )
})

test('an aim is told by how long it keeps seed', () => {
  expect(PLACE_AIMS.map((aim) => told(message(`storage.aim-${aim}`)))).toEqual([
    'for a few years: cool and dry',
    'for years: a fridge at 10 °C or less',
    'for decades: dried to 5–8 %, −18 °C',
    'for nothing in particular',
  ])
})

describe('what readings come to', () => {
  const totals: ClimateTotals = {
    readings: 48,
    from: '2026-01-01T00:00',
    until: '2026-01-02T23:00',
    lowestCc: 810,
    meanCc: 1_205,
    highestCc: 1_990,
    meanPm: 412,
    highestPm: 655,
    meanSum: 94.6,
    shareOutside: 0.25,
  }
  const [TEMPERATURE, HUMIDITY] = [
    '12.1 °C on average, between 8.1 °C and 19.9 °C.',
    'Humidity 41 % on average, 66 % at most.',
  ]
  const SUM =
    'Degrees F and percent of humidity add up to 95 on average; 100 or less is the rule for such a place (common practice).'
  const unread = { ...totals, meanPm: null, highestPm: null, meanSum: null, shareOutside: null }
  const [short, long] = [limitsOf('short-term', NO_OWN), limitsOf('long-term', NO_OWN)]

  test('is a sentence each, with the sum only where it is the rule', () => {
    expect(allTold(totalsInWords(totals, short))).toEqual([
      TEMPERATURE,
      HUMIDITY,
      SUM,
      'Beyond its limits for 25\u00a0% of the measured time.',
    ])
    expect(allTold(totalsInWords({ ...totals, shareOutside: null }, long))).toEqual([TEMPERATURE, HUMIDITY])
  })

  test('without humidity says so, and what cannot be judged for want of it', () => {
    const dry = limitsOf('none', { highestCc: null, highestPm: 450 })
    const wanting = 'Without humidity nobody can tell whether it is dry enough.'
    expect(allTold(totalsInWords(unread, short))).toEqual([TEMPERATURE, 'Humidity was not read.', wanting])
    expect(allTold(totalsInWords(unread, dry))).toEqual([TEMPERATURE, 'Humidity was not read.', wanting])
    expect(allTold(totalsInWords(unread, long))).toEqual([TEMPERATURE, 'Humidity was not read.'])
    expect(allTold(totalsInWords({ ...unread, highestPm: 400 }, long))[1]).toBe('Humidity was not read.')
    expect(allTold(totalsInWords({ ...unread, meanPm: 400 }, long))[1]).toBe('Humidity was not read.')
  })

  test.each([
    [0, 'Never beyond its limits in that time.'],
    [0.004, 'Beyond its limits for less than 1 % of the measured time.'],
    [0.01, 'Beyond its limits for 1\u00a0% of the measured time.'],
    [1, 'Beyond its limits for 100\u00a0% of the measured time.'],
  ])('with the part %d of the time beyond: %s', (shareOutside, sentence) => {
    expect(allTold(totalsInWords({ ...totals, shareOutside }, short)).at(-1)).toBe(sentence)
  })
})

test('a freezer that melts its own ice is told by its cycles', () => {
  expect(told(thawsInWords({ peaks: 14, everyHours: 11.6, riseCc: 905 }))).toBe(
    'It warms by 9.1 °C every 12 hours or so, 14 times in these readings, as a frost-free freezer does to melt its ice. Seed in a sealed jar feels less of it; a freezer without this is better for decades (common practice).',
  )
})

test.each([
  [{ lots: 0, least: 0, middle: 0, most: 0 }, 'None of the lots that are there now was there then.', ''],
  [
    { lots: 1, least: 2.04, middle: 2.04, most: 2.04 },
    'The lot that was there then lost 2 percentage points',
    '',
  ],
  [
    { lots: 3, least: 0, middle: 0.02, most: 0.09 },
    'The 3 lots that were there then lost less than a tenth',
    'point',
  ],
  [
    { lots: 1, least: 0.1, middle: 0.1, most: 0.1 },
    'The lot that was there then lost 0.1 percentage points',
    '',
  ],
  [
    { lots: 3, least: 0.44, middle: 1.26, most: 7 },
    '0.4 to 7 percentage points of living seed, 1.3 in the middle',
    '',
  ],
])('what a spell cost: %j', (cost, words, more) => {
  const said = told(excursionCostInWords(cost))
  expect(said).toContain(words)
  expect(said).toContain(more)
  if (cost.lots > 0)
    expect(said).toMatch(
      /^The .* of living seed.*, by the forecast\. Frost on moist seed and water that settled on cold seed are not in it\.$/,
    )
})

describe('calling a place another kind of place', () => {
  const change: KindChange = {
    celsiusBefore: 20,
    celsiusAfter: 5,
    readFromBefore: null,
    readFromAfter: null,
    lots: 3,
    beginsToFreeze: false,
  }
  const FROST = ' Frost kills moist seed: look at what is said beside each of its lots.'

  test.each<[Partial<KindChange>, string]>([
    [
      {},
      'Nobody measured there. Until now its seed counted as kept at about 20 °C. From now on it counts as kept at about 5 °C all the time. The forecasts of the 3 lots there change. Readings would tell better.',
    ],
    [
      { celsiusAfter: -18, lots: 1, beginsToFreeze: true },
      `Nobody measured there. Until now its seed counted as kept at about 20 °C. From now on it counts as kept at about −18 °C all the time. The forecast of the lot there changes. Readings would tell better.${FROST}`,
    ],
    [
      { readFromBefore: 'Hall', readFromAfter: 'Cellar', lots: 0 },
      'Until now its seed counted as kept in the air of Hall. From now on it counts as kept in the air of Cellar.',
    ],
    [
      { readFromAfter: 'Cellar', celsiusAfter: 20 },
      'Nobody measured there. Until now its seed counted as kept at about 20 °C. From now on it counts as kept in the air of Cellar. The forecasts of the 3 lots there change.',
    ],
    [{ celsiusAfter: 20 }, 'Its seed still counts as kept at about 20 °C: no forecast changes.'],
    [
      { celsiusBefore: 4.5, celsiusAfter: 4.5, beginsToFreeze: true },
      `Its seed still counts as kept at about 4.5 °C: no forecast changes.${FROST}`,
    ],
    [
      { readFromBefore: 'Cellar', readFromAfter: 'Cellar' },
      'The readings of Cellar still count: no forecast changes.',
    ],
  ])('%j', (changes, sentence) => {
    expect(allTold(kindChangeInWords({ ...change, ...changes })).join(' ')).toBe(sentence)
  })
})
