import { addDays } from '../dates/day-arithmetic.ts'
import type { IsoDate } from '../dates/iso-date.ts'

/** When a place is to be walked to next. */
export interface RoundDue {
  readonly on: IsoDate
  readonly when: 'late' | 'today' | 'later'
}

/** The next round of a place by its rhythm in days; a place that was never walked to is due today. */
export function roundDue(lastOn: IsoDate | null, everyDays: number, today: IsoDate): RoundDue {
  const on = lastOn === null ? today : addDays(lastOn, everyDays)
  return { on, when: on < today ? 'late' : on === today ? 'today' : 'later' }
}
