import { chanceOfFewerThan, type LivingOutlook, livingOutlook, type ViabilityBelief } from './outlook.ts'
import { type KeepingPolicy, seedsForOneRegrowing, seedsToKeep } from './what-to-keep.ts'

/** A lot whose seed ages: what is believed alive after so many years more in store. */
export interface AgeingLot {
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
 * reason. The cost is the chance of fewer living seeds than one regrowing needs.
 */
export function outlookAt(facts: WaitingFacts, years: number): SowingOutlook {
  const { lots, policy, demand } = facts
  const later = lots.map(({ seeds, countDoubt, beliefIn }) => ({
    seeds,
    countDoubt,
    belief: beliefIn(years),
  }))
  const untouched = livingOutlook(later)
  const spare = Math.max(0, untouched.mean - seedsToKeep(policy))
  const taken =
    untouched.most === 0
      ? 0
      : Math.min(demand * years, (spare * untouched.most) / Math.max(untouched.mean, 1))
  const left = untouched.most === 0 ? 1 : 1 - taken / untouched.most
  const living =
    taken === 0 ? untouched : livingOutlook(later.map((lot) => ({ ...lot, seeds: lot.seeds * left })))
  return { living, cost: chanceOfFewerThan(seedsForOneRegrowing(policy), living) }
}
