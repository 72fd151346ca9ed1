import {
  type Manner,
  massInWords,
  massToFigures,
  numberInWords,
} from '../../../db/domain/amounts/in-words.ts'
import { milligrams } from '../../../db/domain/amounts/mass.ts'
import type { IsoDate } from '../../../db/domain/dates/iso-date.ts'
import { readDay } from '../../../db/domain/dates/read-day.ts'
import { daysOf } from '../../../db/messages/days-of.ts'
import { figuresIn } from '../../../db/messages/texts.ts'

/** How this library writes numbers, masses and dates. */
export interface Format {
  /** A whole or decimal number as it is, grouped. */
  readonly number: (value: number) => string
  /** A mass in the library's units, from milligrams; less than nothing where it was taken. */
  readonly mass: (milligrams: number) => string
  /** A mass to four figures, as a good scale shows it; the book may keep more of them. */
  readonly massShort: (milligrams: number) => string
  /** A part of one as a percentage. */
  readonly percent: (part: number) => string
  /** A calendar date, or the text as it is where it is not one. */
  readonly day: (iso: string) => string
  /** A day as somebody types it, as in {@link readDay}; null where it is none. */
  readonly readDay: (typed: string, today: IsoDate) => IsoDate | null
  /** A sentence in which each calendar date is written as the keeper writes dates. */
  readonly sentence: (text: string) => string
  /** A moment, down to the minute. */
  readonly moment: (iso: string) => string
  /** The time of a moment. */
  readonly time: (iso: string) => string
  /** The calendar date of a moment, where the keeper is. */
  readonly dayOfMoment: (iso: string) => string
  /** A change with its sign: '+50', '−3'. */
  readonly change: (value: number) => string
}

const FIGURES_SHOWN = 4
const ISO_DAY = /\b\d{4}-\d{2}-\d{2}\b/g

/** Numbers and masses as the library writes them, and as it reads what is typed; dates with the names of `told`. */
export function createFormat(
  manner: Manner,
  told: string = manner.locale,
  direction: 'ltr' | 'rtl' = 'ltr',
): Format {
  const figures = figuresIn(direction)
  const signed = new Intl.NumberFormat(manner.locale, { signDisplay: 'exceptZero' })
  const day = new Intl.DateTimeFormat(told, { dateStyle: 'medium', timeZone: 'UTC' })
  const moment = new Intl.DateTimeFormat(told, { dateStyle: 'medium', timeStyle: 'short' })
  const time = new Intl.DateTimeFormat(told, { timeStyle: 'short' })
  const dayOfMoment = new Intl.DateTimeFormat(told, { dateStyle: 'full' })
  const dayOf = (iso: string) => formatted(day, iso, `${iso}T00:00:00Z`)
  return {
    number: (value) => figures(numberInWords(value, manner, 4)),
    mass: (mg) => figures(`${mg < 0 ? '−' : ''}${massInWords(milligrams(Math.abs(mg)), manner)}`),
    massShort: (mg) => figures(massToFigures(milligrams(mg), FIGURES_SHOWN, manner)),
    // As the sentences of the app write it, so that a card does not write it in two ways.
    percent: (part) => figures(`${numberInWords(100 * part, manner)}\u00a0%`),
    day: dayOf,
    readDay: (typed, today) => readDay(typed, today, daysOf(told, manner.locale)),
    sentence: (text) => text.replace(ISO_DAY, dayOf),
    moment: (iso) => formatted(moment, iso, iso),
    time: (iso) => formatted(time, iso, iso),
    dayOfMoment: (iso) => formatted(dayOfMoment, iso, iso),
    change: (value) => figures(trueMinus(signed.format(value))),
  }
}

function formatted(format: Intl.DateTimeFormat, asGiven: string, instant: string): string {
  const time = Date.parse(instant)
  return Number.isNaN(time) ? asGiven : format.format(time)
}

function trueMinus(text: string): string {
  return text.replace('-', '−')
}
