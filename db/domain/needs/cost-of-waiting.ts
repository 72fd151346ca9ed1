import {
  chanceOfFewerThan,
  type LivingOutlook,
  type LotOutlook,
  livingOutlook,
  type ViabilityBelief,
} from './outlook.ts'
import { type KeepingPolicy, seedsForOneRegrowing, seedsToKeep } from './what-to-keep.ts'

/** A lot whose seed ages: what is believed alive after so many years more in store. */
export interface AgeingLot {
  /** The same for all that splitting and joining connect. */
  readonly origin: number
  readonly seeds: number
  readonly countDoubt: number
  readonly beliefIn: (years: number) => ViabilityBelief
}

export interface WaitingFacts {
  readonly lots: readonly AgeingLot[]
  readonly policy: KeepingPolicy
  /** Seeds that members take in a year. */
  readonly demand: number
}

/** Living seeds expected at a sowing, and the chance that they make no full regrowing any more. */
export interface SowingOutlook {
  readonly living: LivingOutlook
  readonly cost: number
}

/**
 * What a sowing so many years ahead will find if nothing is regrown before it.
 *
 * Members go on taking what they take, but only of what lies above the seed to keep: below it Hand out asks for a
 * reason. They are given of each lot as much as it has of the living seed, nothing of a dead one. The cost is the chance of fewer living seeds than one regrowing needs.
 */
export function outlookAt(facts: WaitingFacts, years: number): SowingOutlook {
  const { lots, policy, demand } = facts
  const later = lots.map(({ origin, seeds, countDoubt, beliefIn }) => ({
    origin,
    seeds,
    countDoubt,
    belief: beliefIn(years),
  }))
  const untouched = livingOutlook(later)
  const takenOf = takenByMembers(later, Math.max(0, untouched.mean - seedsToKeep(policy)), demand * years)
  const living = livingOutlook(later.map((lot) => ({ ...lot, seeds: lot.seeds - takenOf(lot) })))
  return { living, cost: chanceOfFewerThan(seedsForOneRegrowing(policy), living) }
}

/** How many seeds of each lot members will have taken, if they want so many and so many living ones can be spared. */
function takenByMembers(
  lots: readonly LotOutlook[],
  spare: number,
  wanted: number,
): (lot: LotOutlook) => number {
  if (spare <= 0 || wanted <= 0) return () => 0
  const sum = (of: (lot: LotOutlook) => number) => lots.reduce((total, lot) => total + of(lot), 0)
  const living = sum(({ seeds, belief }) => seeds * belief.mean)
  const partAlive = sum(({ seeds, belief }) => seeds * belief.mean ** 2) / living
  const taken = Math.min(wanted, spare / partAlive)
  return ({ seeds, belief }) => Math.min(seeds, (taken * seeds * belief.mean) / living)
}
