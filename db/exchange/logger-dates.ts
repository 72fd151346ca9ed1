/** In which sequence day and month stand where both are numbers. */
export type DayMonthOrder = 'day-first' | 'month-first'

/** A moment as written: its parts, before it is known which of two numbers is the day. */
export interface WrittenMoment {
  readonly year: number
  /** Where the year comes first or the month is a word, the month; else the first of two numbers. */
  readonly first: number
  readonly second: number
  /** Whether `first` and `second` may be day and month either way. */
  readonly either: boolean
  /** 'HH:MM', or null where only a day is written. */
  readonly time: string | null
}

/** How names of months begin, by month: in English, then as written in other languages of Europe (common knowledge). */
const MONTHS: readonly (readonly string[])[] = [
  ['jan', 'ene', 'gen', 'sty'],
  ['feb', 'fév', 'fev', 'lut'],
  ['mar', 'mär', 'mrz', 'mrt', 'maa'],
  ['apr', 'avr', 'abr', 'kwi'],
  ['may', 'mai', 'mei', 'maj', 'mag'],
  ['jun', 'juin', 'giu', 'cze'],
  ['jul', 'juil', 'lug', 'lip'],
  ['aug', 'aoû', 'aou', 'ago', 'sie'],
  ['sep', 'set', 'wrz'],
  ['oct', 'okt', 'out', 'ott', 'paź'],
  ['nov', 'lis'],
  ['dec', 'dez', 'déc', 'dic', 'des', 'gru'],
]
/** A clock, with or without seconds, half of the day and offset; the offset is dropped: the wall clock there counts. */
const TIME =
  /(?:^|[T\s,]+)(\d{1,2}):(\d{2})(?::\d{2}(?:[.,]\d+)?)?\s*([ap]\.?\s?m\.?)?\s*(?:Z|(?:GMT|UTC)?[+-]\d{2}:?\d{2}|GMT|UTC)?$/i
/** Hours and minutes parted by a point, as in Finland and Denmark; only after a day, or they are a number. */
const POINT_TIME = /(?<=\S\s+)(\d{1,2})\.(\d{2})(?:\.\d{2})?$/
/** Year, month, day, hour and minute in one, without signs or with a T (ISO 8601, basic format). */
const COMPACT = /^(\d{4})(\d{2})(\d{2})[T\s]?(\d{2})(\d{2})(?:\d{2})?Z?$/
/** Words that stand between the parts of a date and add nothing, and the name of the day of the week. */
const FILLING = /(?<=\d\.?\s)(?:de|um)\s|(?<=\p{L}\s)de\s|\s(?:Uhr|h)$/giu
const WEEKDAY = /^(\p{L}+)\.?,?\s+/u
const YEAR_FIRST = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/
const YEAR_LAST = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})$/
const DAY_MONTH_WORD = /^(\d{1,2})[./\s-]+(\p{L}{3,12})\.?[,/\s-]+(\d{4}|\d{2})$/iu
const MONTH_WORD_DAY = /^(\p{L}{3,12})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})$/iu

/** Reads a date with or without its time in any usual form; null where it is none. */
export function readMoment(written: string): WrittenMoment | null {
  const compact = COMPACT.exec(written)
  if (compact !== null) {
    const time = readClock(['', compact[4], compact[5]])
    return time === null ? null : moment(compact[1], compact[2], compact[3], time, false)
  }
  const text = plainly(written)
  const clock = TIME.exec(text) ?? POINT_TIME.exec(text)
  const time = clock === null ? null : readClock(clock)
  if (clock !== null && time === null) return null
  const day = (clock === null ? text : text.slice(0, clock.index)).trim()
  const yearFirst = YEAR_FIRST.exec(day)
  if (yearFirst !== null) return moment(yearFirst[1], yearFirst[2], yearFirst[3], time, false)
  const yearLast = YEAR_LAST.exec(day)
  if (yearLast !== null) return moment(yearLast[3], yearLast[1], yearLast[2], time, true)
  const dayWord = DAY_MONTH_WORD.exec(day)
  if (dayWord !== null) return moment(dayWord[3], monthOf(dayWord[2]), dayWord[1], time, false)
  const wordDay = MONTH_WORD_DAY.exec(day)
  if (wordDay !== null) return moment(wordDay[3], monthOf(wordDay[1]), wordDay[2], time, false)
  return null
}

/** Reads a time of day alone; null where it is none. */
export function readTime(text: string): string | null {
  const clock = TIME.exec(text)
  return clock === null || clock.index !== 0 ? null : readClock(clock)
}

/** A date as far as it says something: without the name of the day and words in between. */
function plainly(written: string): string {
  const filled = written.replace(FILLING, ' ').replace(/\s+/g, ' ').trim()
  const weekday = WEEKDAY.exec(filled)?.[1]
  return weekday === undefined || monthOf(weekday) !== '0' ? filled : filled.replace(WEEKDAY, '')
}

function readClock([, hours, minutes, half]: readonly (string | undefined)[]): string | null {
  let hour = Number(hours)
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return null
    hour = (hour % 12) + (half.toLowerCase().startsWith('p') ? 12 : 0)
  }
  if (hour > 23 || Number(minutes) > 59) return null
  return `${String(hour).padStart(2, '0')}:${minutes}`
}

/** The number of a month by how its name begins; '0' where no month's does. */
export function monthOf(word = ''): string {
  const name = word.toLowerCase()
  return String(MONTHS.findIndex((beginnings) => beginnings.some((start) => name.startsWith(start))) + 1)
}

function moment(
  year = '',
  first = '',
  second = '',
  time: string | null,
  either: boolean,
): WrittenMoment | null {
  const short = year.length === 2 ? 2_000 : 0
  const found = { year: short + Number(year), first: Number(first), second: Number(second), either, time }
  return found.first > 0 && found.second > 0 ? found : null
}

/** The day of a written moment as 'YYYY-MM-DD'; null where there is no such day. */
export function dayOfMoment(
  { year, first, second, either }: WrittenMoment,
  order: DayMonthOrder,
): string | null {
  const [month, day] = either && order === 'day-first' ? [second, first] : [first, second]
  if (month > 12 || day > daysInMonth(year, month)) return null
  return `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
}

function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28
  return [4, 6, 9, 11].includes(month) ? 30 : 31
}

/**
 * In which sequence a file writes day and month, or null where its rows do not tell.
 *
 * A number above 12 tells. Else the way in which fewer days lie between one row and the next: a logger reads steadily.
 */
export function orderOf(moments: readonly WrittenMoment[]): DayMonthOrder | null {
  const open = moments.filter(({ either }) => either)
  if (open.some(({ first }) => first > 12)) return 'day-first'
  if (open.some(({ second }) => second > 12)) return 'month-first'
  const [dayFirst, monthFirst] = [leapt(open, 'day-first'), leapt(open, 'month-first')]
  if (dayFirst === monthFirst) return open.every(({ first, second }) => first === second) ? 'day-first' : null
  return dayFirst < monthFirst ? 'day-first' : 'month-first'
}

/** The days between each row and the next, added up whichever way they go. */
function leapt(moments: readonly WrittenMoment[], order: DayMonthOrder): number {
  let sum = 0
  let before: number | null = null
  for (const moment of moments) {
    const day = Date.parse(`${dayOfMoment(moment, order)}T00:00:00Z`)
    if (before !== null) sum += Math.abs(day - before)
    before = day
  }
  return sum
}
