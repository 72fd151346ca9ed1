import type { DayManner } from '../domain/dates/read-day.ts'
import { LANGUAGES } from './languages.ts'

const made = new Map<string, DayManner>()

/** How days are typed: names of months in `told` and every language shipped, day and month in the order of `locale`. */
export function daysOf(told: string, locale: string): DayManner {
  const name = `${told} ${locale}`
  const known = made.get(name)
  if (known !== undefined) return known
  const writers = [...new Set([told, locale, ...LANGUAGES.map(({ code }) => code)])].flatMap((one) =>
    (['long', 'short'] as const).map(
      (month) => new Intl.DateTimeFormat(one, { day: 'numeric', month, timeZone: 'UTC' }),
    ),
  )
  const named = (writer: Intl.DateTimeFormat, month: number) =>
    writer.formatToParts(Date.UTC(2026, month, 15)).find(({ type }) => type === 'month')?.value ?? ''
  const parts = new Intl.DateTimeFormat(locale).formatToParts(0).map(({ type }) => type)
  const manner: DayManner = {
    order: parts.indexOf('day') < parts.indexOf('month') ? 'day-first' : 'month-first',
    months: Array.from({ length: 12 }, (_, month) => writers.map((writer) => named(writer, month))),
  }
  made.set(name, manner)
  return manner
}
