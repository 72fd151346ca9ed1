import { addDays, addYears } from '../dates/day-arithmetic.ts'
import { type IsoDate, isoDate, yearOf } from '../dates/iso-date.ts'

/** Days after the sowing day on which this season can still be sown. Common practice, no source. */
const LATE_SOWING_DAYS = 60

/** A season: named after the year of its sowing, with that day and the next season's. */
export interface Season {
  readonly year: number
  readonly sowing: IsoDate
  readonly nextSowing: IsoDate
}

/**
 * The season that can still be sown on a day, with a sowing day given as 'MM-DD'.
 *
 * Until two months after its sowing day a season counts as this one. Throws RangeError for a day that is no date.
 */
export function seasonOf(today: IsoDate, sowingDay: string): Season {
  const thisYear = isoDate(`${yearOf(today)}-${sowingDay}`)
  const sowing = addDays(thisYear, LATE_SOWING_DAYS) >= today ? thisYear : addYears(thisYear, 1)
  return { year: yearOf(sowing), sowing, nextSowing: addYears(sowing, 1) }
}
