import { readNumber } from '../domain/amounts/read-number.ts'
import { type HarvestReading, type HarvestYear, readHarvestYear } from '../domain/dates/harvest-year.ts'
import { fold } from '../domain/shared/fold.ts'
import type { Message } from '../messages/message.ts'
import { type DayMonthOrder, dayOfMoment, monthOf, readMoment } from './logger-dates.ts'

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
/** Words beside a year that say no more than the year does, folded; the names of months are known apart. */
const ADDS_NOTHING = new Set(
  (
    'summer autumn fall winter spring early mid late end of in the season crop harvest harvested year grown saved ' +
    'collected picked from sommer herbst winter fruhling fruhjahr spat anfang mitte ende ernte jahr jahrgang im ' +
    'ete automne hiver printemps debut fin recolte annee en de du la verano otono invierno primavera cosecha ano del ' +
    'el los a principios mediados finales fines cosechado cosechada recolectado recolectada recogido recogida ' +
    'guardado guardada cultivado cultivada temporada campana recoleccion'
  ).split(' '),
)
/** Words that make a year a guess. */
const MAKES_A_GUESS = new Set(
  (
    'about approx approximately circa ca c around roughly maybe perhaps probably possibly likely guess guessed ' +
    'estimated est so or ish etwa ungefahr um vielleicht wohl vermutlich environ vers peut etre probablement hacia ' +
    'aproximadamente quiza quizas probablemente aprox alrededor cerca unos mas menos creo que seguramente posiblemente'
  ).split(' '),
)

/** A harvest year of a list: `words` is the cell where it says more than the year that was taken from it. */
export type ListYear =
  | { readonly kind: 'harvest'; readonly harvest: HarvestYear; readonly words: string }
  | { readonly kind: 'unreadable'; readonly because: Message }

/**
 * A harvest year in the forms of a list: also a whole day, '2019.0' and 'summer 2019', which says no more than the year.
 *
 * 'Before 2010' and 'not 2019' name a year that it was not: the harvest stays unknown, and the words are kept.
 */
export function readListYear(cell: string, thisYear: number): ListYear {
  const whole = YEAR_CELL.exec(cell) ?? DAY_CELL.exec(cell)
  const direct = inWhole(readHarvestYear(whole?.[1] ?? cell, thisYear))
  if (direct.kind === 'harvest') return direct
  const words = wordsOf(cell).filter((word) => !isMonth(word) && !ADDS_NOTHING.has(word))
  const moment = readMoment(cell)
  const years = cell.match(/(?<!\d)\d{4}(?!\d)/g) ?? []
  const year = moment?.year ?? (years.length === 1 && /\p{L}/u.test(cell) ? Number(years[0]) : null)
  if (year === null) return direct
  if (words.length === 0) return inWhole(readHarvestYear(String(year), thisYear))
  if (words.every((word) => MAKES_A_GUESS.has(word)))
    return inWhole(readHarvestYear(`about ${year}`, thisYear))
  return { kind: 'harvest', harvest: { kind: 'unknown' }, words: cell }
}

function inWhole(reading: HarvestReading): ListYear {
  return reading.kind === 'harvest' ? { ...reading, words: '' } : reading
}

function wordsOf(cell: string): string[] {
  return fold(cell)
    .split(' ')
    .filter((word) => /\p{L}/u.test(word))
}

/** Names of months, folded, in the languages of the lists and their neighbours (common knowledge). */
const MONTH_NAMES = (
  'january february march april may june july august september october november december ' +
  'januar janner februar feber marz mai juni juli oktober dezember ' +
  'janvier fevrier mars avril juin juillet aout septembre octobre novembre decembre ' +
  'enero febrero marzo abril mayo junio julio agosto septiembre setiembre octubre noviembre diciembre ' +
  'gennaio febbraio aprile maggio giugno luglio settembre ottobre dicembre ' +
  'janeiro fevereiro marco maio junho julho setembro outubro novembro dezembro ' +
  'januari februari maart mei augustus maj augusti mrz mrt ' +
  'stycznia lutego marca kwietnia maja czerwca lipca sierpnia wrzesnia pazdziernika listopada grudnia'
).split(' ')

const WEEKDAYS = new Set(
  (
    'monday tuesday wednesday thursday friday saturday sunday tues thurs ' +
    'montag dienstag mittwoch donnerstag freitag samstag sonnabend sonntag ' +
    'lundi mardi mercredi jeudi vendredi samedi dimanche lunes martes miercoles jueves viernes sabado domingo'
  )
    .split(' ')
    .flatMap((name) => [name, name.slice(0, 3), name.slice(0, 2)]),
)
const PARTS_OF_DATES = /^(?:t|z|am|pm|uhr|h|de|den|le|el|the|on|of|am|st|nd|rd|th|gmt|utc)$/

/** Whether a word is a month's name or begins one with three letters or more; 'après' and 'maybe' only begin like one. */
function isMonth(word: string): boolean {
  return word.length > 2 && MONTH_NAMES.some((name) => name.startsWith(word.replace(/^(sep)t$/, '$1')))
}

/** Whether a date says only a day: a word beside it, such as 'before', makes it another statement. */
function saysOnlyADay(cell: string): boolean {
  return wordsOf(cell).every((word) => isMonth(word) || WEEKDAYS.has(word) || PARTS_OF_DATES.test(word))
}

/** A day, a month ('Jun 1975', '06/1975', '197506--') or a year ('1975', '19750000'). */
export function readListDay(cell: string, order: DayMonthOrder): DayReading {
  if (!saysOnlyADay(cell)) return { kind: 'unreadable' }
  const packed = /^(\d{4})(\d{2}|--)(\d{2}|--)$/.exec(cell)
  if (packed !== null) return partsOf(packed[1] ?? '', packed[2] ?? '', packed[3] ?? '')
  const moment = readMoment(cell)
  if (moment !== null) {
    const day = dayOfMoment(moment, order)
    return day === null ? { kind: 'unreadable' } : { kind: 'day', day }
  }
  const year = /^(\d{4})(?:\.0+)?$/.exec(cell)
  if (year !== null) return partsOf(year[1] ?? '', '--', '--')
  const worded = /^(\p{L}{3,12})\.?,?\s+(\d{4})$/iu.exec(cell)
  const month = Number(monthOf(worded?.[1]))
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
