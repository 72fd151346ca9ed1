import { type Message, message } from '../../messages/message.ts'
import type { Band } from './band.ts'
import { FAR_YEARS } from './forecast.ts'

/** Years from today until a lot is below its threshold; 0 where it is already. */
export function yearsTold({ low, middle, high }: Band): Message {
  const most = high > FAR_YEARS ? message('forecast.years-far', { years: FAR_YEARS }) : counted(high)
  if (middle === 0)
    return high < 0.5 ? message('forecast.years-below') : message('forecast.years-below-probably', { most })
  if (middle > FAR_YEARS) return message('forecast.years-far', { years: FAR_YEARS })
  if (middle < HALF_A_YEAR) return message('forecast.years-soon', { most })
  return message('forecast.years-about', {
    middle: counted(middle),
    low: low < NOW ? 0 : rounded(low),
    most,
  })
}

/** Nearer than this nobody can tell. Judgement. */
const HALF_A_YEAR = 0.5
/** A figure that would be written as 0. */
const NOW = 0.05

function counted(years: number): Message {
  return message('forecast.years-count', { years: rounded(years) })
}

function rounded(years: number): number {
  return years < 10 ? Math.round(10 * years) / 10 : Math.round(years)
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
