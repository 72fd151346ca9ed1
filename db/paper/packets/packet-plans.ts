import type { Carries } from './label-sheets.ts'

/** Facts that give way, the last first, when a label is too full for all of them. */
export type Fact = 'source' | 'germination' | 'contents' | 'known'
const FACTS: readonly Fact[] = ['source', 'germination', 'contents']

/**
 * What a label carries and how small its type may get before the next, poorer plan is tried.
 *
 * `smallest` is a place on the scale from 0, every style at its stated minimum, to 1, every style at its largest.
 */
export interface Plan {
  readonly smallest: number
  readonly crop: boolean
  readonly species: boolean
  readonly variety: boolean
  readonly facts: readonly Fact[]
  readonly library: boolean
  readonly sowing: boolean
  readonly cautions: 'eight-point' | 'smaller' | 'first-sentences' | 'left-out'
  /** Whether long texts may be cut and end in an ellipsis. */
  readonly mayCut: boolean
}

const RICH: Plan = {
  smallest: 0.5,
  crop: true,
  species: true,
  variety: true,
  facts: FACTS,
  library: true,
  sowing: true,
  cautions: 'eight-point',
  mayCut: false,
}
const WITHOUT_SOWING: Plan = { ...RICH, sowing: false, smallest: 0.25 }
const WITHOUT_SPECIES: Plan = { ...WITHOUT_SOWING, species: false, smallest: 0 }
const CUT: Plan = { ...WITHOUT_SPECIES, mayCut: true }
const WITHOUT_LIBRARY: Plan = { ...CUT, library: false }
const CAUTIONS_ALONE: Plan = { ...WITHOUT_LIBRARY, facts: [] }

const BARE: Plan = { ...CAUTIONS_ALONE, species: false, mayCut: false }
const BARE_CUT: Plan = { ...BARE, mayCut: true }

const EVERYTHING: readonly Plan[] = [
  RICH,
  WITHOUT_SOWING,
  WITHOUT_SPECIES,
  CUT,
  WITHOUT_LIBRARY,
  { ...WITHOUT_LIBRARY, facts: ['source', 'germination'] },
  { ...WITHOUT_LIBRARY, facts: ['source'] },
  CAUTIONS_ALONE,
  { ...CAUTIONS_ALONE, cautions: 'smaller' },
  { ...CAUTIONS_ALONE, cautions: 'first-sentences' },
  { ...CAUTIONS_ALONE, cautions: 'left-out' },
]
const NUMBER: Plan = { ...BARE, crop: false, variety: false }
const ALL_FACTS: readonly Fact[] = [...FACTS, 'known']

/**
 * The plans for a label, the richest first. The last fits any label whatever its texts.
 *
 * The order is that of importance: an optional line goes first, then the library's name, count, germination and source;
 * a caution is printed smaller only when nothing else is left to give up, then by its first sentence, and is left out
 * only where it cannot be printed at all. Whatever is lost is said in a warning.
 */
export const PLANS: Readonly<Record<Carries, readonly Plan[]>> = {
  'all-known': [
    { ...RICH, facts: ALL_FACTS },
    { ...WITHOUT_SOWING, facts: ALL_FACTS },
    { ...CUT, facts: ALL_FACTS },
    ...EVERYTHING,
  ],
  everything: EVERYTHING,
  'number-only': [
    NUMBER,
    { ...NUMBER, cautions: 'smaller' },
    { ...NUMBER, cautions: 'first-sentences', mayCut: true },
    { ...NUMBER, cautions: 'left-out', mayCut: true },
  ],
  'name-and-number': [
    BARE,
    BARE_CUT,
    { ...BARE, cautions: 'smaller' },
    { ...BARE_CUT, cautions: 'smaller' },
    { ...BARE_CUT, cautions: 'first-sentences' },
    { ...BARE_CUT, crop: false, cautions: 'first-sentences' },
    { ...BARE_CUT, crop: false, variety: false, cautions: 'first-sentences' },
    { ...BARE_CUT, cautions: 'left-out' },
    { ...BARE_CUT, crop: false, cautions: 'left-out' },
    { ...BARE_CUT, crop: false, variety: false, cautions: 'left-out' },
  ],
}
