import type { IsoDate } from '../dates/iso-date.ts'
import { seasonOf } from '../needs/season.ts'

/** Whether the sheet for a fire is to be printed again: once a season, named by its sowing day 'MM-DD'. Common practice, no source. */
export function fireSheetDue(lastPrinted: IsoDate | null, today: IsoDate, sowingDay: string): boolean {
  return lastPrinted === null || seasonOf(lastPrinted, sowingDay).year < seasonOf(today, sowingDay).year
}
