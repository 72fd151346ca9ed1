import type { LivingSeeds } from './living-seeds.ts'
import { type KeepingPolicy, seedsForOneRegrowing, seedsToKeep } from './what-to-keep.ts'

/** How an accession stands, from best to worst. */
export type NeedState = 'well-stocked' | 'watch' | 'regrow' | 'rescue'

export const NEED_STATES = [
  'rescue',
  'regrow',
  'watch',
  'well-stocked',
] as const satisfies readonly NeedState[]

export interface NeedFacts {
  readonly living: LivingSeeds
  readonly policy: KeepingPolicy
  /** Part alive over the accession's tested seed, with its threshold; null where nothing was tested. */
  readonly testedViability: number | null
  readonly threshold: number
  /** The word for one counted unit in the plural: seeds, clusters, fruits. */
  readonly unit: string
}

/** How an accession stands, why, and the arithmetic line by line. */
export interface Need {
  readonly state: NeedState
  readonly keep: number
  readonly oneRegrowing: number
  readonly sentence: string
  readonly reasons: readonly string[]
  readonly arithmetic: readonly string[]
}

/**
 * Judges whether an accession holds enough living seed, in words.
 *
 * Rescue: too few for one full regrowing. Regrow this season: fewer than must be kept, or tested below its threshold.
 * Watch: enough by the middle figure, but the doubt reaches below what must be kept.
 */
export function judgeNeed(facts: NeedFacts): Need {
  const keep = seedsToKeep(facts.policy)
  const oneRegrowing = seedsForOneRegrowing(facts.policy)
  const { living, policy, unit } = facts
  const reasons: string[] = []
  if (living.about < oneRegrowing) {
    reasons.push(
      `About ${living.about} living ${unit} are too few for one regrowing of ${policy.plants} plants, which needs ${oneRegrowing}.`,
    )
  } else if (living.about < keep) {
    reasons.push(
      `About ${living.about} living ${unit} are fewer than the ${keep} to keep for ${policy.regrowings} regrowings.`,
    )
  } else if (living.low < keep) {
    reasons.push(
      `There may be as few as ${living.low} living ${unit}, below the ${keep} to keep: weigh or test to be sure.`,
    )
  }
  const weak = facts.testedViability !== null && facts.testedViability < facts.threshold
  if (weak && facts.testedViability !== null) {
    reasons.push(
      `${percent(facts.testedViability)} sprouted in the last tests, below the threshold of ${percent(facts.threshold)}.`,
    )
  }
  if (reasons.length === 0) reasons.push(`About ${living.about} living ${unit} cover the ${keep} to keep.`)
  return {
    state: stateOf(living, keep, oneRegrowing, weak),
    keep,
    oneRegrowing,
    sentence: `about ${living.about} living ${unit} of the ${keep} that ${policy.regrowings} regrowings of ${policy.plants} plants need`,
    reasons,
    arithmetic: [
      `one regrowing: ${policy.plants} plants / ${policy.emergence} emergence = ${oneRegrowing} living ${unit}`,
      `to keep: ${policy.regrowings} regrowings x ${policy.plants} plants / ${policy.emergence} emergence = ${keep} living ${unit}`,
      `in the drawer: about ${living.about} living of ${living.total} ${unit}, between ${living.low} and ${living.high}`,
    ],
  }
}

function stateOf(living: LivingSeeds, keep: number, oneRegrowing: number, weak: boolean): NeedState {
  if (living.about < oneRegrowing) return 'rescue'
  if (living.about < keep || weak) return 'regrow'
  return living.low < keep ? 'watch' : 'well-stocked'
}

function percent(part: number): string {
  return `${Math.round(100 * part)} %`
}
