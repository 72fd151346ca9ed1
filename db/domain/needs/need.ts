import { countInWords, type Manner, numberInWords, toFigures } from '../amounts/in-words.ts'
import type { CountedUnit } from '../crops/counted-unit.ts'
import { chanceInWords } from './assurance.ts'
import type { LivingSeeds } from './living-seeds.ts'
import { type KeepingPolicy, seedsForOneRegrowing, seedsToKeep } from './what-to-keep.ts'

/** How an accession stands, from best to worst; last what has no seed any more, of which nothing can be regrown. */
export type NeedState = 'well-stocked' | 'watch' | 'regrow' | 'rescue' | 'none-left'

/** The states as they are listed: worst first, and what has no seed left behind all that has some. */
export const NEED_STATES = [
  'rescue',
  'regrow',
  'watch',
  'well-stocked',
  'none-left',
] as const satisfies readonly NeedState[]

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
  readonly unit: CountedUnit
  readonly manner: Manner
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

const PLANTS: CountedUnit = { one: 'plant', many: 'plants' }
const IN_LETTERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten']

/**
 * Judges whether an accession holds enough living seed.
 *
 * None left: no seed here nor elsewhere. Rescue: too few for one full regrowing. Regrow this season: fewer than must be kept, or tested below its threshold.
 * Watch: enough by the middle figure, but the doubt reaches below what must be kept; or weak as far as it was tested,
 * beside enough seed that was not, such as last season's harvest: a test comes before a regrowing.
 */
export function needState(facts: Omit<NeedFacts, 'unit' | 'manner'>): NeedState {
  const { living, policy } = facts
  if (living.total === 0 && facts.notCounted === 0) return 'none-left'
  if (living.about < seedsForOneRegrowing(policy)) return 'rescue'
  const keep = seedsToKeep(policy)
  const weak = isWeak(facts)
  if (living.about < keep || (weak && facts.untested < keep)) return 'regrow'
  return weak || living.low < keep ? 'watch' : 'well-stocked'
}

/** The judgement of {@link needState} in words, with its reasons and its arithmetic. */
export function judgeNeed(facts: NeedFacts): Need {
  const { living, policy, unit, manner } = facts
  const grouped = (count: number) => numberInWords(count, manner)
  const keep = seedsToKeep(policy)
  const oneRegrowing = seedsForOneRegrowing(policy)
  const plants = countInWords(policy.plants, PLANTS, manner)
  const need = policy.regrowings === 1 ? 'needs' : 'need'
  const about = aboutLiving(living.about, [oneRegrowing, keep], facts)
  const regrowings = `${inLetters(policy.regrowings)} of ${plants} ${need}`
  return {
    state: needState(facts),
    keep,
    oneRegrowing,
    sentence:
      living.about <= keep
        ? `${about} of the ${grouped(keep)} that ${regrowings}`
        : `${about}; ${regrowings} ${grouped(keep)}`,
    reasons: reasonsOf(facts, keep, oneRegrowing),
    arithmetic: [
      ...toKeepInWords(facts, keep, oneRegrowing),
      `in the drawer: about ${grouped(living.about)} living of ${countInWords(living.total, unit, manner)}, between ${grouped(living.low)} and ${grouped(living.high)}`,
    ],
  }
}

function toKeepInWords(facts: NeedFacts, keep: number, oneRegrowing: number): readonly string[] {
  const { policy, manner } = facts
  const plants = countInWords(policy.plants, PLANTS, manner)
  const by = `${plants} / ${numberInWords(policy.emergence, manner, 4)} emergence`
  if (policy.assurance === undefined)
    return [
      `one regrowing: ${by} = ${exactLiving(oneRegrowing, facts)}`,
      `to keep: ${policy.regrowings} x ${by} = ${exactLiving(keep, facts)}`,
    ]
  const mean = seedsForOneRegrowing({ ...policy, assurance: undefined })
  return [
    `one regrowing: ${by} = ${exactLiving(mean, facts)} on average; ${numberInWords(oneRegrowing, manner)} make them ${chanceInWords(policy.assurance)}`,
    `to keep: ${policy.regrowings} x ${numberInWords(oneRegrowing, manner)} = ${exactLiving(keep, facts)}`,
  ]
}

function reasonsOf(facts: NeedFacts, keep: number, oneRegrowing: number): readonly string[] {
  const { living, policy, testedViability, threshold, untested, manner } = facts
  const grouped = (count: number) => numberInWords(count, manner)
  const about = aboutLiving(living.about, [oneRegrowing, keep], facts)
  const plants = countInWords(policy.plants, PLANTS, manner)
  const reasons: string[] = []
  if (living.about < oneRegrowing) {
    reasons.push(`Too few for one regrowing of ${plants}: ${about}, and it needs ${grouped(oneRegrowing)}.`)
  } else if (living.about < keep) {
    reasons.push(`Fewer than the ${grouped(keep)} to keep for ${inLetters(policy.regrowings)}: ${about}.`)
  } else if (living.low < keep) {
    const low = aboutLiving(living.low, [keep], facts)
    reasons.push(
      `Perhaps fewer than the ${grouped(keep)} to keep: ${about}, but it may be ${low}. Weigh or test to be sure.`,
    )
  }
  if (testedViability !== null && isWeak(facts)) {
    reasons.push(
      `Weak: ${percentBelow(testedViability, manner)} of its tested seed is thought to be alive, below the threshold of ${percent(threshold, manner)}.`,
    )
    if (untested >= keep) {
      const more = aboutLiving(untested, [keep], facts)
      reasons.push(
        `Beside it ${more} were never tested, enough for the ${grouped(keep)} to keep: test them before you regrow it.`,
      )
    }
  }
  return reasons.length > 0 ? reasons : [`Enough for the ${grouped(keep)} to keep: ${about}.`]
}

function isWeak(facts: Pick<NeedFacts, 'testedViability' | 'threshold'>): boolean {
  return facts.testedViability !== null && facts.testedViability < facts.threshold
}

type Words = Pick<NeedFacts, 'unit' | 'manner'>

/** Two significant figures, unless they would stand on the other side of a figure that the number is judged by. */
function aboutLiving(count: number, judgedBy: readonly number[], words: Words): string {
  if (count === 0) return `no living ${words.unit.many}`
  const rounded = toFigures(count, 2)
  const crosses = judgedBy.some((figure) => count < figure !== rounded < figure)
  return `about ${exactLiving(crosses ? count : rounded, words)}`
}

function exactLiving(count: number, { unit, manner }: Words): string {
  return `${numberInWords(count, manner)} living ${count === 1 ? unit.one : unit.many}`
}

function inLetters(regrowings: number): string {
  return `${IN_LETTERS[regrowings] ?? regrowings} ${regrowings === 1 ? 'regrowing' : 'regrowings'}`
}

function percent(part: number, manner: Manner): string {
  return `${numberInWords(100 * part, manner, 2)} %`
}

/** Rounded down to a tenth, so that it never reads as the threshold that it is below. */
function percentBelow(part: number, manner: Manner): string {
  return percent(Math.floor(1_000 * part + 1e-9) / 1_000, manner)
}
