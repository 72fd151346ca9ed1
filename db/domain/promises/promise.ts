import type { IsoDate } from '../dates/iso-date.ts'

/** How a promise to bring seed back stands. */
export const PROMISE_STATES = ['overdue', 'open', 'met', 'waived'] as const
export type PromiseState = (typeof PROMISE_STATES)[number]

/** What is known of a visit's promise. */
export interface PromiseFacts {
  /** The day by which seed was to be back; null where none was named. */
  readonly by: IsoDate | null
  /** Whether seed came back for it, by a return that stands. */
  readonly broughtBack: boolean
  /** Whether the keeper no longer waits for it. */
  readonly waived: boolean
}

/** How a promise stands on a day. Seed that came back meets it, even after it was let go; the day itself is in time. */
export function promiseState({ by, broughtBack, waived }: PromiseFacts, today: IsoDate): PromiseState {
  if (broughtBack) return 'met'
  if (waived) return 'waived'
  return by !== null && by < today ? 'overdue' : 'open'
}
