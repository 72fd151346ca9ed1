import { type Message, message } from '../../messages/message.ts'
import { toFigures } from '../amounts/in-words.ts'
import type { CountedUnitName } from '../crops/counted-unit.ts'
import { isPiece } from '../crops/pieces.ts'
import { isKept, type Keeping, keepingValues } from '../keeping/keeping.ts'
import { timesIn100 } from './assurance.ts'
import type { LivingSeeds } from './living-seeds.ts'
import { type KeepingPolicy, seedsForOneRegrowing, seedsToKeep } from './what-to-keep.ts'

/**
 * The states of what is kept, as they are listed: worst first, and what has no seed left behind all that has some, as nothing
 * can be regrown of it.
 */
export const KEPT_STATES = ['rescue', 'regrow', 'watch', 'well-stocked', 'none-left'] as const

/** All states: last what the library does not keep. */
export const NEED_STATES = [...KEPT_STATES, 'not-kept'] as const

/** How an accession stands. */
export type NeedState = (typeof NEED_STATES)[number]

/** How many there are in each state. */
export function countsByState(count: (state: NeedState) => number): Record<NeedState, number> {
  return Object.fromEntries(NEED_STATES.map((state) => [state, count(state)])) as Record<NeedState, number>
}

export interface NeedFacts {
  readonly living: LivingSeeds
  readonly policy: KeepingPolicy
  /** Part thought to be alive today over the accession's tested seed, with its threshold; null: nothing was tested. */
  readonly testedViability: number | null
  readonly threshold: number
  /** Living seeds, by assumption, in lots that nobody has tested and that no forecast calls weak. */
  readonly untested: number
  /** Seeds of it that do not count: in quarantine, the reference sample, a duplicate elsewhere. */
  readonly notCounted: number
  readonly unit: CountedUnitName
  /** Whether the library keeps it at all. */
  readonly keeping: Keeping
}

/** How an accession stands, why, and the arithmetic line by line. */
export interface Need {
  readonly state: NeedState
  readonly keep: number
  readonly oneRegrowing: number
  readonly sentence: Message
  readonly reasons: readonly Message[]
  readonly arithmetic: readonly Message[]
}

/**
 * Judges whether an accession holds enough living seed.
 *
 * Not kept: passed on or closed, however much there is. None left: no seed here nor elsewhere. Rescue: too few for one full regrowing. Regrow this season: fewer than must be kept, or tested below its threshold.
 * Watch: enough by the middle figure, but the doubt reaches below what must be kept; or weak as far as it was tested,
 * beside enough seed that was not, such as last season's harvest: a test comes before a regrowing. What is planted in pieces is
 * due every year, however much there is.
 */
export function needState(facts: NeedFacts): NeedState {
  const { living, policy } = facts
  if (!isKept(facts.keeping.policy)) return 'not-kept'
  if (living.total === 0 && facts.notCounted === 0) return 'none-left'
  if (living.about < seedsForOneRegrowing(policy)) return 'rescue'
  if (isPiece(facts.unit)) return 'regrow'
  const keep = seedsToKeep(policy)
  const weak = isWeak(facts)
  if (living.about < keep || (weak && facts.untested < keep)) return 'regrow'
  return weak || living.low < keep ? 'watch' : 'well-stocked'
}

/** Living seeds to keep: none of what the library does not keep. */
export function toKeepOf({ policy, keeping }: Pick<NeedFacts, 'policy' | 'keeping'>): number {
  return isKept(keeping.policy) ? seedsToKeep(policy) : 0
}

/** The judgement of {@link needState} with what to tell of it: its reasons and its arithmetic. */
export function judgeNeed(facts: NeedFacts): Need {
  const { living, policy, unit, keeping } = facts
  const state = needState(facts)
  const keep = toKeepOf(facts)
  const oneRegrowing = seedsForOneRegrowing(policy)
  const drawer = message('needs.sum-drawer', {
    living: living.about,
    total: { seeds: living.total, unit },
    low: living.low,
    high: living.high,
  })
  if (state === 'not-kept')
    return {
      state,
      keep,
      oneRegrowing,
      sentence: message('keeping.stock', { living: aboutLiving(living.about, [], unit) }),
      reasons: [message('keeping.why', keepingValues(keeping))],
      arithmetic: [drawer],
    }
  return {
    state,
    keep,
    oneRegrowing,
    sentence: message('needs.stock', { living: aboutLiving(living.about, [oneRegrowing, keep], unit), keep }),
    reasons: reasonsOf(facts, keep, oneRegrowing),
    arithmetic: [...toKeep(facts, keep, oneRegrowing), drawer],
  }
}

function toKeep({ policy, unit }: NeedFacts, keep: number, oneRegrowing: number): readonly Message[] {
  if (isPiece(unit)) return [message('pieces.sum', { unit, plants: policy.plants })]
  const { plants, emergence, regrowings, assurance } = policy
  const exact = (count: number) => message('needs.living', { count, unit })
  if (assurance === undefined)
    return [
      message('needs.sum-one', { plants, emergence, living: exact(oneRegrowing) }),
      message('needs.sum-keep', { regrowings, plants, emergence, living: exact(keep) }),
    ]
  const mean = seedsForOneRegrowing({ ...policy, assurance: undefined })
  const times = timesIn100(assurance)
  return [
    message('needs.sum-one-sure', { plants, emergence, living: exact(mean), seeds: oneRegrowing, times }),
    message('needs.sum-keep-sure', { regrowings, seeds: oneRegrowing, living: exact(keep) }),
  ]
}

function reasonsOf(facts: NeedFacts, keep: number, oneRegrowing: number): readonly Message[] {
  const { testedViability, threshold, untested, unit } = facts
  if (isPiece(unit))
    return [
      ...tooFew(facts, keep, oneRegrowing),
      message('pieces.due', { unit, plants: facts.policy.plants }),
    ]
  const weak =
    testedViability !== null && isWeak(facts)
      ? [
          message('needs.weak', {
            alive: percentBelow(testedViability),
            threshold: Number((100 * threshold).toFixed(2)),
          }),
          ...(untested >= keep
            ? [message('needs.test-first', { more: aboutLiving(untested, [keep], unit), keep })]
            : []),
        ]
      : []
  const reasons = [...tooFew(facts, keep, oneRegrowing), ...weak]
  const living = aboutLiving(facts.living.about, [oneRegrowing, keep], unit)
  return reasons.length > 0 ? reasons : [message('needs.enough', { keep, living })]
}

function tooFew({ living: seeds, policy, unit }: NeedFacts, keep: number, oneRegrowing: number): Message[] {
  const { plants, regrowings } = policy
  const living = aboutLiving(seeds.about, [oneRegrowing, keep], unit)
  if (seeds.about < oneRegrowing) return [message('needs.too-few', { plants, living, one: oneRegrowing })]
  if (seeds.about < keep) return [message('needs.fewer', { keep, regrowings, living })]
  if (seeds.low >= keep) return []
  return [message('needs.not-sure', { living, low: aboutLiving(seeds.low, [keep], unit), keep })]
}

function isWeak(facts: Pick<NeedFacts, 'testedViability' | 'threshold'>): boolean {
  return facts.testedViability !== null && facts.testedViability < facts.threshold
}

/** Two significant figures, unless they would stand on the other side of a figure that the number is judged by. */
function aboutLiving(count: number, judgedBy: readonly number[], unit: CountedUnitName): Message {
  if (count === 0) return message('needs.none-living', { unit })
  const rounded = toFigures(count, 2)
  const crosses = judgedBy.some((figure) => count < figure !== rounded < figure)
  return message('needs.living-about', { count: crosses ? count : rounded, unit })
}

/** Per cent, rounded down to a tenth, so that it never reads as the threshold that it is below. */
function percentBelow(part: number): number {
  return Math.floor(1_000 * part + 1e-9) / 10
}
