import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decimalMark } from '../../db/domain/amounts/in-words.ts'
import { readAmount } from '../../db/domain/amounts/read-amount.ts'
import { readByMark } from '../../db/domain/amounts/read-number.ts'
import { type HarvestYear, harvestTold, readHarvestYear } from '../../db/domain/dates/harvest-year.ts'
import { isoDate } from '../../db/domain/dates/iso-date.ts'
import { readDay } from '../../db/domain/dates/read-day.ts'
import { readSample } from '../../db/domain/weights/read-sample.ts'
import { addedColumns, fieldOfHeading, LIST_FIELDS } from '../../db/exchange/list-fields.ts'
import { readListYear } from '../../db/exchange/list-values.ts'
import { daysOf } from '../../db/messages/days-of.ts'
import { LANGUAGES } from '../../db/messages/languages.ts'
import { type Message, message } from '../../db/messages/message.ts'
import { textsOf } from '../../db/messages/texts-of.ts'

const THIS_YEAR = 2026
/** Libraries that write numbers in each of the ways there are: 1,240.5; 1.240,5; 1 240,5; 1’240.5; 12,40,000. */
const LOCALES = ['en-GB', 'es-ES', 'es-MX', 'de-DE', 'fr-FR', 'de-CH', 'en-IN'] as const

const ways = await Promise.all(
  LANGUAGES.flatMap(({ code: language }) =>
    LOCALES.map(async (locale) => {
      const { say } = await textsOf({ language, locale, massUnits: 'metric' })
      const told = (text: Message | string) => (typeof text === 'string' ? text : say(text))
      return { language, locale, told, mark: decimalMark({ locale }) }
    }),
  ),
)

describe.each(ways)(
  'what is told in $language by a library of $locale',
  ({ language, locale, told, mark }) => {
    const read = (typed: string, packetSeeds: number | null = null) =>
      readAmount(typed, { packetSeeds, decimalMark: mark })

    it('is read as the same number of seeds when it is typed', () => {
      const unit = fc.constantFrom('seed', 'cluster', 'fruit')
      fc.assert(
        fc.property(fc.integer({ min: 1, max: 9_999_999 }), unit, fc.boolean(), (count, counted, about) => {
          const text = told(message(about ? 'amount.seeds-about' : 'amount.seeds', { count, unit: counted }))
          expect(read(text), text).toEqual({
            kind: 'amount',
            amount: { kind: 'count', count, estimated: about },
          })
        }),
        { numRuns: 60 },
      )
    })

    it('is read as the same day when it is typed, and so is the short form of its place', () => {
      const short = new Intl.DateTimeFormat(locale, { dateStyle: 'short', timeZone: 'UTC' })
      fc.assert(
        fc.property(fc.integer({ min: 0, max: 20_000 }), (days) => {
          const day = isoDate(new Date(Date.UTC(2000, 0, 1 + days)).toISOString().slice(0, 10))
          const read = (text: string) => readDay(text, isoDate('2026-11-30'), daysOf(language, locale))
          const text = told(message('table.no-day', { example: { day } })).replace(
            /^.*?: |^.*such as |\.$/g,
            '',
          )
          expect(read(text), text).toBe(day)
          if (day < '2100') expect(read(short.format(Date.parse(day)))).toBe(day)
        }),
        { numRuns: 60 },
      )
    })

    it('is read as the same mass when it is typed', () => {
      fc.assert(
        fc.property(fc.integer({ min: 1, max: 99_999_999 }), (mg) => {
          const text = told(
            message('stock.carried-over', {
              lot: message('amount.mass-alone', { mass: { mg }, unit: 'seed' }),
            }),
          )
          const number = /\d[\d.,'’\s]*(?:mg|kg|g)/.exec(text)?.[0] ?? ''
          expect(read(number), number).toEqual({ kind: 'amount', amount: { kind: 'mass', mass: mg } })
        }),
        { numRuns: 60 },
      )
    })

    it('is read as the same sample when it is typed', () => {
      fc.assert(
        fc.property(
          fc.integer({ min: 1, max: 9_999 }),
          fc.integer({ min: 1, max: 4_000 }),
          (seeds, mgEach) => {
            const mass = { mg: seeds * mgEach }
            const text = told(message('amount.weighed', { count: seeds, unit: 'seed', mass }))
            const [weighs = '', counted = ''] = text.split(/(?<=g), /)
            for (const typed of [`${counted} weigh ${weighs}`, `${counted} pesan ${weighs}`])
              expect(readSample(typed, mark), typed).toEqual({
                kind: 'sample',
                sample: { seeds, mass: mass.mg },
              })
          },
        ),
        { numRuns: 60 },
      )
    })

    it('is read as the same harvest when it is typed, or stands in a list', () => {
      const year = fc.integer({ min: 1_800, max: THIS_YEAR })
      const any = fc.oneof<fc.Arbitrary<HarvestYear>[]>(
        fc.constant({ kind: 'unknown' }),
        fc.record({ kind: fc.constant('year'), year, about: fc.boolean() }),
        fc
          .tuple(year, year)
          .filter(([from, to]) => from < to)
          .map(([from, to]) => ({ kind: 'span', from, to })),
      )
      fc.assert(
        fc.property(any, (harvest) => {
          const text = told(harvestTold(harvest))
          expect(readHarvestYear(text, THIS_YEAR), text).toEqual({ kind: 'harvest', harvest })
          expect(readListYear(text, THIS_YEAR), text).toEqual({ kind: 'harvest', harvest, words: '' })
        }),
        { numRuns: 60 },
      )
    })

    it('is read as what was meant where it is offered to be typed instead', () => {
      const typed = fc.constantFrom(
        '1,234',
        '200',
        '12.5',
        '1,234 g',
        'about 12 g',
        '3 packets',
        'unos 2 sobres',
        'about 3 packs',
      )
      fc.assert(
        fc.property(typed, fc.constantFrom(1, 25, 1_500), (text, packetSeeds) => {
          const asked = readAmount(text, { packetSeeds })
          expect(asked.kind).toBe('ask')
          if (asked.kind !== 'ask') return
          for (const choice of asked.choices)
            expect(read(told(choice.told), packetSeeds), told(choice.told)).toEqual(
              readAmount(choice.typed, { packetSeeds }),
            )
        }),
      )
    })

    it('names the columns of a list so that they are known again', () => {
      for (const field of LIST_FIELDS)
        expect(fieldOfHeading(told(message(`import.field.${field}`)))).toBe(field)
      const added = [message('import.row-in-list'), message('import.why-not')].map(told)
      expect(addedColumns(added)).toBe(added.length)
      expect(addedColumns(added.toReversed())).toBe(0)
    })

    it('writes numbers in messages by the mark that is read in what is typed', () => {
      const grams = fc.integer({ min: 1, max: 99_999_999 }).map((number) => number / 10)
      fc.assert(
        fc.property(grams, (weight) => {
          const text = told(message('amount.per-hundred', { weight })).replace(/ g .*$/, '')
          expect(readByMark(text, mark), text).toBe(weight)
          if (!Number.isInteger(weight)) expect(text.at(-2), text).toBe(mark)
        }),
        { numRuns: 60 },
      )
    })
  },
)
