import { type IsoDate, isoDate, yearOf } from './iso-date.ts'

/** Mean length of a year of the Julian calendar, days. */
export const DAYS_IN_YEAR = 365.25

const DAYS_IN_400_YEARS = 146_097

/**
 * The days from 1 March of the year 0 to a date, in the Gregorian calendar.
 *
 * Years begin in March here, so that the leap day is a year's last and every month's start has one formula (Richards
 * 1998, in Mapping Time, from memory; checked against the calendar of the platform in the tests).
 */
function dayNumber(date: IsoDate): number {
  const month = Number(date.slice(5, 7))
  const year = month > 2 ? yearOf(date) : yearOf(date) - 1
  const monthFromMarch = (month + 9) % 12
  return (
    365 * year +
    Math.floor(year / 4) -
    Math.floor(year / 100) +
    Math.floor(year / 400) +
    Math.floor((153 * monthFromMarch + 2) / 5) +
    Number(date.slice(8)) -
    1
  )
}

function dateOf(day: number): IsoDate {
  const era = Math.floor(day / DAYS_IN_400_YEARS)
  const inEra = day - era * DAYS_IN_400_YEARS
  const yearInEra = Math.floor(
    (inEra - Math.floor(inEra / 1_460) + Math.floor(inEra / 36_524) - Math.floor(inEra / 146_096)) / 365,
  )
  const inYear = inEra - (365 * yearInEra + Math.floor(yearInEra / 4) - Math.floor(yearInEra / 100))
  const monthFromMarch = Math.floor((5 * inYear + 2) / 153)
  const month = ((monthFromMarch + 2) % 12) + 1
  const year = 400 * era + yearInEra + (month <= 2 ? 1 : 0)
  return written(year, month, inYear - Math.floor((153 * monthFromMarch + 2) / 5) + 1)
}

function written(year: number, month: number, day: number): IsoDate {
  return isoDate(`${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`)
}

/** The date some whole days after another; negative: before. Throws RangeError beyond the years 1000 to 9999. */
export function addDays(date: IsoDate, days: number): IsoDate {
  return dateOf(dayNumber(date) + days)
}

/** Whole days from one date to a later one; negative where it is earlier. */
export function daysBetween(from: IsoDate, to: IsoDate): number {
  return dayNumber(to) - dayNumber(from)
}

/** The same day some years on; 29 February becomes 1 March where there is none. */
export function addYears(date: IsoDate, years: number): IsoDate {
  const first = written(yearOf(date) + years, Number(date.slice(5, 7)), 1)
  return addDays(first, Number(date.slice(8)) - 1)
}
