import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Told } from '../../../db/contract/told.ts'
import { type MassUnit, MILLIGRAMS_PER } from '../../../db/domain/amounts/mass.ts'
import { planDrying } from '../../../db/domain/moisture/drying.ts'
import {
  dryingInWords,
  freezingCaution,
  freezingCautionOfMany,
  moistureAdvice,
  moistureInWords,
} from '../../../db/domain/moisture/moisture-words.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { createTexts } from '../../../db/messages/texts.ts'
import { inEnglish } from '../../builders/in-english.ts'

const told = (one: Message | null) => inEnglish<Told>(one ?? '')

const found = (low: number, high = low) => ({ percent: (low + high) / 2, low, high })
const MOULD = 'Do not close it in airtight above about 10 % (common practice): it can go mouldy.'
const tooMoist = (percent: string) =>
  `Too moist to freeze: it may hold up to ${percent} % water. Frost can kill it: dry it to 8 % or less first.`

test('a moisture is one figure to a tenth, or a span where it is coarse', () => {
  expect(told(moistureInWords(found(7.24)))).toBe('7.2 % moisture')
  expect(told(moistureInWords({ percent: 7, low: 6.98, high: 7.02 }))).toBe('7 % moisture')
  expect(told(moistureInWords({ percent: 7, low: 6.9, high: 7.1 }))).toBe(
    'about 7 % moisture, between 6.9 and 7.1 %',
  )
  expect(told(moistureInWords({ percent: 7, low: 7, high: 7.0625 }))).toBe(
    'about 7 % moisture, between 7 and 7.1 %',
  )
})

test('a span is never told narrower than it is', () => {
  expect(told(moistureInWords({ percent: 7, low: 5.96, high: 8.04 }))).toBe(
    'about 7 % moisture, between 5.9 and 8.1 %',
  )
})

describe('drying', () => {
  const inWords = (grams: number, from: number, to: number, massUnits: 'metric' | 'ounces') => {
    const drying = { grams, from, to }
    const texts = createTexts({
      code: 'en',
      direction: 'ltr',
      manner: { locale: 'en', massUnits },
      translation: {},
    })
    return texts.say(dryingInWords(planDrying(drying), drying))
  }
  const moisture = fc.integer({ min: 1, max: 600 }).map((tenths) => tenths / 10)

  test('by the mass, the water or the gel that is told ends within 0.1 point of the goal, however little seed it is', () => {
    const grams = fc.integer({ min: -2_000, max: 5_000 }).map((of) => 10 ** (of / 1_000))
    fc.assert(
      fc.property(
        grams,
        moisture,
        moisture,
        fc.constantFrom('metric', 'ounces'),
        (mass, one, other, units) => {
          fc.pre(one !== other)
          const [from, to] = [Math.max(one, other), Math.min(one, other)]
          const told = [...inWords(mass, from, to, units).matchAll(/([\d,.]+) (mg|g|kg|oz|lb)\b/g)].map(
            ([, digits, unit]) =>
              (Number(digits?.replaceAll(',', '')) * MILLIGRAMS_PER[unit as MassUnit]) / MILLIGRAMS_PER.g,
          )
          const [stopAt = 0, water = 0, gel = 0] = told
          for (const left of [stopAt, mass - water, mass - gel / 10])
            expect(Math.abs(100 - (mass * (100 - from)) / left - to)).toBeLessThan(0.1 + 1e-6)
        },
      ),
    )
  })

  test('of small lots tells parts of a milligram where they matter', () => {
    expect(inWords(0.4, 12, 5, 'metric')).toBe(
      'Stop when the seed weighs 370.5 mg: 29.5 mg of water must go. For that, 295 mg of fresh drying gel is enough.',
    )
    expect(inWords(1, 12, 5, 'metric')).toContain('weighs 926 mg: 73.7 mg of water')
    expect(inWords(0.4, 12, 5, 'ounces')).toContain('weighs 0.01307 oz: 0.00104 oz of water')
    expect(inWords(450, 12.5, 12.5, 'metric')).toBe('At 12.5 % it is already as dry as 12.5 %.')
  })
})

test('what seed shows in the hand has its words', () => {
  expect(
    (['breaks', 'bends', 'soft'] as const).map((gives) => told(message(`storage.gives-${gives}`))),
  ).toEqual(['snaps or shatters', 'bends or flattens', 'dents under a thumbnail'])
})

describe('frost', () => {
  test('is no danger to seed of 8 % or less, and is told of moister and of unmeasured seed', () => {
    expect(freezingCaution(8)).toBeNull()
    expect(told(freezingCaution(8.1))).toBe(tooMoist('8.1'))
    expect(told(freezingCaution(8.04))).toBe(tooMoist('8.1'))
    expect(told(freezingCaution(13.26))).toBe(tooMoist('13.3'))
    expect(told(freezingCaution(null))).toBe(
      'Measure its moisture first: frost can kill seed above about 8 %.',
    )
  })

  test.each([
    [0, 5, ''],
    [1, 1, 'The lot is'],
    [3, 3, 'All 3 are'],
    [1, 3, '1 of the 3 is'],
    [2, 3, '2 of the 3 are'],
  ])('for %i of %i lots is told once', (cautioned, lots, who) => {
    const rest = ' too moist to freeze or not measured yet. Frost can kill seed above about 8 %.'
    expect(told(freezingCautionOfMany(cautioned, lots))).toBe(who === '' ? '' : who + rest)
  })
})

test('the highest that a moisture may be says what to do with the seed', () => {
  const dry = ['Dry enough for an airtight jar and for the freezer.']
  expect(moistureAdvice(found(4, 8)).map(told)).toEqual(dry)
  expect(moistureAdvice(found(4, 8.5)).map(told)).toEqual([tooMoist('8.5')])
  expect(moistureAdvice(found(10)).map(told)).toEqual([tooMoist('10')])
  expect(moistureAdvice(found(8, 10.5)).map(told)).toEqual([MOULD, tooMoist('10.5')])
})
