import type { Band } from './band.ts'
import { FAR_YEARS } from './forecast.ts'

/** Years from today until a lot is below its threshold; 0 where it is already. */
export function yearsInWords({ low, middle, high }: Band): string {
  if (middle === 0)
    return high < 0.5 ? 'below it already' : `probably below it already, ${round(high)} at most`
  if (middle > FAR_YEARS) return `more than ${FAR_YEARS} years`
  const most = high > FAR_YEARS ? `more than ${FAR_YEARS} years` : round(high)
  if (middle < HALF_A_YEAR) return `less than half a year, ${most} at most`
  return `about ${round(middle)}, between ${low < NOW ? 'now' : round(low, false)} and ${most}`
}

/** Nearer than this nobody can tell. Judgement. */
const HALF_A_YEAR = 0.5
/** A figure that would be written as 0. */
const NOW = 0.05

function round(years: number, unit = true): string {
  const shown = years < 10 ? Math.round(10 * years) / 10 : Math.round(years)
  return unit ? `${shown} ${shown === 1 ? 'year' : 'years'}` : `${shown}`
}

/** So many years ahead a keeper still plans. Judgement. */
export const SOON_YEARS = 5

/** What the years of the lots of one place come to. */
export interface YearsOfMany {
  /** Until half of those that are not below yet are so: the middle lot of each figure of their bands; null: all are below. */
  readonly half: Band | null
  /** Lots that are more likely below than not today. */
  readonly already: number
  /** Lots more that will be so within {@link SOON_YEARS} years. */
  readonly soon: number
}

/** Adds up the years of some lots. */
export function yearsOfMany(lots: readonly Band[]): YearsOfMany {
  const above = lots.filter(({ middle }) => middle > 0)
  const middleOf = (figures: readonly number[]) => {
    const sorted = figures.toSorted((one, other) => one - other)
    return sorted[Math.floor((sorted.length - 1) / 2)] as number
  }
  return {
    half:
      above.length === 0
        ? null
        : {
            low: middleOf(above.map(({ low }) => low)),
            middle: middleOf(above.map(({ middle }) => middle)),
            high: middleOf(above.map(({ high }) => high)),
          },
    already: lots.length - above.length,
    soon: above.filter(({ middle }) => middle <= SOON_YEARS).length,
  }
}
