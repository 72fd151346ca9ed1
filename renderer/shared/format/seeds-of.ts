import type { CountedUnit } from '../../../db/domain/crops/counted-unit.ts'
import type { CountedIn, Seeds } from '../../../db/messages/message.ts'

/** A number of what a crop's seed is counted in, to be told. */
export function seedsOf(seeds: number, unit: CountedUnit): Seeds {
  return { seeds, unit: unit.one as CountedIn }
}
