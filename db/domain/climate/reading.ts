import { addDays, daysBetween } from '../dates/day-arithmetic.ts'
import { type IsoDate, isoDate } from '../dates/iso-date.ts'

/** One reading of a place. */
export interface ClimateReading {
  /** On the wall clock there, 'YYYY-MM-DDTHH:MM'. */
  readonly at: string
  /** Hundredths of a degree C. */
  readonly temperatureCc: number
  /** Relative humidity per mille; null where only the temperature was read. */
  readonly humidityPm: number | null
}

/** Degrees F of hundredths of a degree C. */
export function fahrenheit(temperatureCc: number): number {
  return (temperatureCc / 100) * 1.8 + 32
}

/** Hundredths of a degree C of degrees F. */
export function fromFahrenheit(degrees: number): number {
  return Math.round(((degrees - 32) / 1.8) * 100)
}

const MINUTES_IN_DAY = 1_440
const EPOCH = isoDate('1970-01-01')

/** The day of a wall clock. */
export function dayOf(at: string): IsoDate {
  return at.slice(0, 10) as IsoDate
}

/** Minutes since 1970 of a wall clock, as if it never changed between summer and winter. */
export function minuteOf(at: string): number {
  return (
    daysBetween(EPOCH, dayOf(at)) * MINUTES_IN_DAY + Number(at.slice(11, 13)) * 60 + Number(at.slice(14, 16))
  )
}

/** The wall clock of {@link minuteOf}. */
export function wallClock(minute: number): string {
  const day = Math.floor(minute / MINUTES_IN_DAY)
  const left = minute - day * MINUTES_IN_DAY
  const two = (value: number) => String(value).padStart(2, '0')
  return `${addDays(EPOCH, day)}T${two(Math.floor(left / 60))}:${two(left % 60)}`
}
