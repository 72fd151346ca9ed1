import { fold } from '../shared/fold.ts'
import { type IsoDate, isIsoDate } from './iso-date.ts'

/** How days are typed where the keeper is. */
export interface DayManner {
  /** Whether the day or the month comes first where both are numbers. */
  readonly order: 'day-first' | 'month-first'
  /** Names of each month, January first, in the languages that are read. */
  readonly months: readonly (readonly string[])[]
}

/** As people type them: two numbers may be parted by these. */
const PARTED = /^(\d{1,2})[./\- ]+(\d{1,2})(?:[./\- ]+(\d{4}|\d{2}))?\.?$/
const WHOLE = /^(\d{4})[./\- ](\d{1,2})[./\- ](\d{1,2})$/
const FEWEST_LETTERS = 3

/**
 * Reads a day as people type it: '2026-03-14', '14.3.2026', '14/3', '14 Mar 2026', 'March 14', '14 de marzo de 2026'.
 *
 * Without a year it is that of `today`; a year of two digits is of this century. Null where it is no day of the calendar.
 */
export function readDay(typed: string, today: IsoDate, { order, months }: DayManner): IsoDate | null {
  const text = fold(typed.replace(/\p{Cf}/gu, '')).trim()
  const whole = WHOLE.exec(text)
  if (whole) return dayOf(whole[1], whole[2], whole[3])
  const parted = PARTED.exec(text)
  const year = (given: string | undefined) =>
    given === undefined ? today.slice(0, 4) : given.length === 2 ? `20${given}` : given
  if (parted) {
    const [, one, two, ofYear] = parted
    const dayFirst = Number(one) > 12 || (order === 'day-first' && Number(two) <= 12)
    return dayFirst ? dayOf(year(ofYear), two, one) : dayOf(year(ofYear), one, two)
  }
  const words = text.match(/\p{L}+/gu) ?? []
  const numbers = text.match(/\d+/g) ?? []
  const month = monthIn(words, months)
  const day = numbers.find((number) => number.length <= 2)
  const ofYear = numbers.find((number) => number.length === 4) ?? numbers.filter((one) => one !== day)[0]
  return month === null || numbers.length > 2 ? null : dayOf(year(ofYear), month, day)
}

/** The one month that a word names, by its first letters at least. */
function monthIn(words: readonly string[], months: DayManner['months']): string | null {
  const named = months.flatMap((names, at) =>
    names.some((name) =>
      words.some(
        (word) => word === fold(name) || (word.length >= FEWEST_LETTERS && fold(name).startsWith(word)),
      ),
    )
      ? [at + 1]
      : [],
  )
  return named.length === 1 ? String(named[0]) : null
}

function dayOf(year = '', month = '', day = ''): IsoDate | null {
  const date = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`
  return isIsoDate(date) ? date : null
}
