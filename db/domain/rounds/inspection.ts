import { type Message, message } from '../../messages/message.ts'
import { FREEZING_AGAINST_INSECTS, GEL_CAUTIONS } from '../moisture/moisture-words.ts'

/** What a round looks for, in the order in which it is looked at. */
export const INSPECTIONS = ['pests', 'seals', 'gel', 'dampness', 'reading'] as const
export type Inspection = (typeof INSPECTIONS)[number]

/** What decides what is looked at in a place. */
export interface Stop {
  /** Whether it is a freezer or stands in one. */
  readonly freezes: boolean
  /** Whether it is a fridge or stands in one. */
  readonly chills: boolean
  /** Whether lots lie there in anything airtight. */
  readonly closedIn: boolean
}

/**
 * What there is to look at in a place. Common practice, no source: insects and mice do not live in frost, a door or a
 * lid can only leak where there is one, and drying gel is of use in closed jars only.
 */
export function looksFor({ freezes, chills, closedIn }: Stop): Inspection[] {
  const wanted: Record<Inspection, boolean> = {
    pests: !freezes,
    seals: freezes || chills || closedIn,
    gel: closedIn,
    dampness: true,
    reading: true,
  }
  return INSPECTIONS.filter((look) => wanted[look])
}

/** What to mind on a round, as far as there is anything of the kind to look at. Common practice, no source. */
export function roundCautions(looks: readonly Inspection[]): Message[] {
  return [
    ...(looks.includes('gel') ? GEL_CAUTIONS : []),
    ...(looks.includes('pests')
      ? [
          message('storage.insects-apart'),
          FREEZING_AGAINST_INSECTS,
          message('storage.do-not-spray'),
          message('storage.mice'),
        ]
      : []),
    ...(looks.includes('seals') ? [message('storage.cold-jar')] : []),
  ]
}
