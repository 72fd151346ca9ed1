import { type Message, message } from '../../messages/message.ts'
import type { Breeding } from '../needs/population-goal.ts'

/**
 * How a variety is kept from crossing where it grows: in the open, far enough from others; covered, in a cage or
 * bagged, so that it crosses with none; or sown later, so that it flowers when the others of its kind have done.
 */
export const ISOLATION_METHODS = ['open', 'covered', 'later'] as const
export type IsolationMethod = (typeof ISOLATION_METHODS)[number]

/** What pollinates a crop, as far as covering it is concerned. */
export const POLLINATIONS = ['self', 'insect', 'wind'] as const
export type Pollination = (typeof POLLINATIONS)[number]

/** Hours for a cage, or for the bags, whatever number of plants stands in it. Judgement, no source. */
const HOURS_FOR_A_COVER = 1
/** Hours for each plant: looking under the cover, or pollinating it by hand again and again. Judgement, no source. */
const HOURS_FOR_A_PLANT: Readonly<Record<Pollination, number>> = { self: 0.02, insect: 0.15, wind: 0.25 }
/** Hours for a second sowing and for watching that the first has done flowering. Judgement, no source. */
const HOURS_FOR_LATER = 2

/** What pollinates a crop, from the crop table's words: what mostly fertilises itself needs no hand under a cover. */
export function pollinationOf(pollination: string | null, breeding: Breeding): Pollination {
  if (breeding === 'selfer') return 'self'
  return pollination?.includes('wind') ? 'wind' : 'insect'
}

/** Hours of work that a way of growing adds over a season. */
export function hoursOfIsolation(way: IsolationMethod, plants: number, pollination: Pollination): number {
  switch (way) {
    case 'open':
      return 0
    case 'covered':
      return HOURS_FOR_A_COVER + plants * HOURS_FOR_A_PLANT[pollination]
    case 'later':
      return HOURS_FOR_LATER
  }
}

/** Hours as a keeper would say them: to the half hour below ten. */
export function toldHours(hours: number): Message {
  const said = hours < 10 ? Math.max(0.5, Math.round(2 * hours) / 2) : Math.round(hours)
  if (said < 1) return message('season.half-hour')
  return said === 1 ? message('season.one-hour') : message('season.hours', { hours: said })
}
