import { readNumber } from '../domain/amounts/read-number.ts'
import { type HarvestReading, readHarvestYear } from '../domain/dates/harvest-year.ts'
import { type DayMonthOrder, dayOfMoment, readMoment } from './logger-dates.ts'

/** Which sign stands before the decimals of a column. */
export type DecimalMark = 'comma' | 'point'

/** A day as a list gives it: whole, or only its month or year. */
export type DayReading =
  | { readonly kind: 'day'; readonly day: string }
  /** `last` is the last day it can have been; nothing earlier is claimed of the seed's age. */
  | { readonly kind: 'part'; readonly last: string; readonly words: string }
  | { readonly kind: 'unreadable' }

/** The decimal mark of a column: a number that can be read one way only tells; null where none does. */
export function decimalMarkOf(cells: readonly string[]): DecimalMark | null {
  let comma = 0
  let point = 0
  for (const cell of cells) {
    const number = /[\d.,'’\s]*\d/.exec(cell)?.[0].trim() ?? ''
    if (readNumber(number).kind !== 'number') continue
    const mark = /[.,](?=\d+$)/.exec(number)?.[0]
    if (mark === undefined || /^[1-9]\d{0,2}(?:([.,])\d{3}){2,}$/.test(number)) continue
    if (mark === ',') comma += 1
    else point += 1
  }
  if (comma === point) return null
  return comma > point ? 'comma' : 'point'
}

/** An amount with its decimal mark settled by its column, so that '1.234 g' is asked about no more. */
export function withMark(cell: string, mark: DecimalMark | null): string {
  const both = /^(\D*)([1-9]\d{0,2})([.,])(\d{3})(?!\d)(.*)$/s.exec(cell)
  if (both === null || mark === null || /[.,]\d/.test(both[5] ?? '')) return cell
  const [, before = '', whole = '', sign, three = '', after = ''] = both
  const isDecimal = (sign === ',') === (mark === 'comma')
  return isDecimal ? `${before}${whole}.${three}0${after}` : `${before}${whole}${three}${after}`
}

const YEAR_CELL = /^(\d{4})(?:\.0+)?$/
const DAY_CELL = /^(\d{4})-\d{2}-\d{2}$/
const WORD_AND_YEAR = /^(?:\p{Letter}+\.?\s+)+(?:of\s+)?(\d{4})$/u
const ABOUT = /^(?:about|approx|circa|ca|around|roughly|c)\b/i

/** A harvest year in the forms of a list: also a whole day, '2019.0' and 'summer 2019', which says no more than the year. */
export function readListYear(cell: string, thisYear: number): HarvestReading {
  const year = YEAR_CELL.exec(cell) ?? DAY_CELL.exec(cell)
  if (year !== null) return readHarvestYear(year[1] ?? '', thisYear)
  const moment = readMoment(cell)
  if (moment !== null) return readHarvestYear(String(moment.year), thisYear)
  const worded = ABOUT.test(cell) ? null : WORD_AND_YEAR.exec(cell)
  return readHarvestYear(worded?.[1] ?? cell, thisYear)
}

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

/** A day, a month ('Jun 1975', '06/1975', '197506--') or a year ('1975', '19750000'). */
export function readListDay(cell: string, order: DayMonthOrder): DayReading {
  const packed = /^(\d{4})(\d{2}|--)(\d{2}|--)$/.exec(cell)
  if (packed !== null) return partsOf(packed[1] ?? '', packed[2] ?? '', packed[3] ?? '')
  const moment = readMoment(cell)
  if (moment !== null) {
    const day = dayOfMoment(moment, order)
    return day === null ? { kind: 'unreadable' } : { kind: 'day', day }
  }
  const year = /^(\d{4})(?:\.0+)?$/.exec(cell)
  if (year !== null) return partsOf(year[1] ?? '', '--', '--')
  const worded = /^([a-z]{3,9})\.?,?\s+(\d{4})$/i.exec(cell)
  const month = MONTHS.indexOf((worded?.[1] ?? '').slice(0, 3).toLowerCase()) + 1
  if (worded !== null && month > 0) return partsOf(worded[2] ?? '', String(month).padStart(2, '0'), '--')
  const numbered = /^(?:(\d{1,2})[/.-](\d{4})|(\d{4})[/.-](\d{1,2}))$/.exec(cell)
  if (numbered === null) return { kind: 'unreadable' }
  const [, first, last, firstYear, second] = numbered
  return partsOf(last ?? firstYear ?? '', (first ?? second ?? '').padStart(2, '0'), '--')
}

function partsOf(year: string, month: string, day: string): DayReading {
  const known = (part: string) => part !== '--' && part !== '00'
  if (Number(year) < 1_000 || (known(day) && !known(month))) return { kind: 'unreadable' }
  if (!known(month)) return { kind: 'part', last: `${year}-12-31`, words: year }
  const inMonth = { year: Number(year), first: Number(month), either: false, time: null }
  const last = [31, 30, 29, 28]
    .map((second) => dayOfMoment({ ...inMonth, second }, 'month-first'))
    .find(Boolean)
  if (last === undefined || last === null) return { kind: 'unreadable' }
  if (!known(day)) return { kind: 'part', last, words: `${year}-${month}` }
  const whole = dayOfMoment({ ...inMonth, second: Number(day) }, 'month-first')
  return whole === null ? { kind: 'unreadable' } : { kind: 'day', day: whole }
}
