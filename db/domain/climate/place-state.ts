import { type Message, message } from '../../messages/message.ts'
import { daysBetween } from '../dates/day-arithmetic.ts'
import type { IsoDate } from '../dates/iso-date.ts'
import { beyond, type ClimateLimits, hasLimits } from './limits.ts'
import type { ClimateReading } from './reading.ts'
import { timeOutside } from './time-outside.ts'

/** How a place stands by its latest readings. */
export const PLACE_STATES = [
  'good',
  'too-warm',
  'too-damp',
  'too-warm-and-damp',
  'no-aim',
  'stale',
  'no-readings',
] as const
export type PlaceState = (typeof PLACE_STATES)[number]

/** The days by whose readings a place is judged, and after how many without one nobody knows any more. */
export const JUDGED_OVER_DAYS = 14
export const STALE_AFTER_DAYS = 60
/** A place may be outside for so small a part of the time: a door is opened now and then. Common practice, no source. */
export const TOLERATED_SHARE = 0.05

/**
 * How a place stands: by the readings of the two weeks up to its latest one, in order of time.
 *
 * `latest` is the day of the latest reading of all, or null where there is none.
 */
export function placeState(
  recent: readonly ClimateReading[],
  limits: ClimateLimits,
  latest: IsoDate | null,
  today: IsoDate,
): PlaceState {
  if (latest === null) return 'no-readings'
  if (daysBetween(latest, today) > STALE_AFTER_DAYS) return 'stale'
  if (!hasLimits(limits)) return 'no-aim'
  const { measuredHours, tooWarmHours, tooDampHours } = timeOutside(recent, limits)
  const most = TOLERATED_SHARE * measuredHours
  // A first reading stands for no time yet, but says how it is.
  const only = recent.length === 1 ? recent[0] : undefined
  const now = only === undefined ? { tooWarm: false, tooDamp: false } : beyond(only, limits)
  const warm = now.tooWarm || tooWarmHours > most
  const damp = now.tooDamp || tooDampHours > most
  if (warm && damp) return 'too-warm-and-damp'
  if (warm) return 'too-warm'
  return damp ? 'too-damp' : 'good'
}

/** The state in words. `latest` as in {@link placeState}. */
export function stateInWords(state: PlaceState, limits: ClimateLimits, latest: IsoDate | null): Message {
  if (state === 'good')
    return limits.highestSum === null && limits.highestPm === null
      ? message('storage.state-cold')
      : message('storage.state-dry')
  return state === 'stale'
    ? message('storage.state-stale', { day: { day: latest ?? '' } })
    : message(`storage.state-${state}`)
}
