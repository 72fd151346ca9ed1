import { probability } from '../shared/probability.ts'
import { binomialChances } from './binomial.ts'

/** Stages speak of one state of the seed: a test further back begins anew. A judgement, not published. */
export const STAGES_WITHIN_DAYS = 90

/** One step of a staged test: counts are cumulative over the groups so far. */
export interface Stage {
  readonly tested: number
  /** Regrow if at most this many germinated; null: never at this step. */
  readonly regrowAtMost: number | null
  /** Keep if at least this many germinated; null: never at this step. */
  readonly keepAtLeast: number | null
  readonly confidence: 'seen' | 'from-memory' | 'computed'
}

/** A test in groups that stops as soon as it can tell. */
export interface StagedPlan {
  readonly threshold: number
  readonly groupSize: number
  readonly published: boolean
  readonly stages: readonly Stage[]
}

/** What a staged test comes to, where the part alive is really `alive`. */
export interface StagedOutcome {
  readonly alive: number
  readonly regrow: number
  readonly keep: number
  readonly undecided: number
  /** Seeds spent on average. */
  readonly seeds: number
}

/**
 * The sequential test of the 85 % standard in groups of 40: tested, regrow at most, keep at least.
 *
 * Ellis, Hong & Roberts 1985, Handbook for Genebanks vol. 1 ch. 15; first two rows as reprinted in Handbook No. 8
 * (seen), the others from memory.
 */
const PUBLISHED_85: readonly Stage[] = [
  { tested: 40, regrowAtMost: 29, keepAtLeast: null, confidence: 'seen' },
  { tested: 80, regrowAtMost: 64, keepAtLeast: 76, confidence: 'seen' },
  { tested: 120, regrowAtMost: 100, keepAtLeast: 111, confidence: 'from-memory' },
  { tested: 160, regrowAtMost: 135, keepAtLeast: 146, confidence: 'from-memory' },
  { tested: 200, regrowAtMost: 170, keepAtLeast: 181, confidence: 'from-memory' },
  { tested: 240, regrowAtMost: 205, keepAtLeast: 216, confidence: 'from-memory' },
  { tested: 280, regrowAtMost: 240, keepAtLeast: 251, confidence: 'from-memory' },
  { tested: 320, regrowAtMost: 275, keepAtLeast: 286, confidence: 'from-memory' },
  { tested: 360, regrowAtMost: 310, keepAtLeast: 321, confidence: 'from-memory' },
]

/** Reproduces every row of the published table as Wald's test of 85 % against 90 %: half its width in seeds. */
const PUBLISHED_HALF_WIDTH = 5.15
/** Groups after which a staged test stops undecided: as many as the published table has. */
const MOST_GROUPS = 9

/** A threshold that a test can be planned for: every lot lies above nothing and below everything. */
export function plannableThreshold(threshold: number): number {
  return Math.min(0.99, Math.max(0.05, threshold))
}

const logOdds = (part: number) => Math.log(part / (1 - part))

/**
 * A staged test for a threshold (0 < threshold < 1) in groups of `groupSize`, with as many groups as `available` seeds
 * give, nine at most.
 *
 * At 85 % in groups of 40 the published table; else Wald's sequential test (Wald 1945, from memory) of the threshold
 * against a lot that is a third of the way from it to 100 %, with the error rate that the published table has.
 */
export function stagedPlan(threshold: number, groupSize: number, available: number): StagedPlan {
  if (!(threshold > 0 && threshold < 1)) throw new RangeError(`Not a threshold to plan for: ${threshold}`)
  const groups = Math.min(MOST_GROUPS, Math.floor(available / groupSize))
  const published = threshold === 0.85 && groupSize === 40
  const stages = published ? PUBLISHED_85 : computedStages(threshold, groupSize)
  return { threshold, groupSize, published, stages: stages.slice(0, groups) }
}

function computedStages(threshold: number, groupSize: number): readonly Stage[] {
  return Array.from({ length: MOST_GROUPS }, (_, index) => computedStage(threshold, groupSize * (index + 1)))
}

function computedStage(threshold: number, tested: number): Stage {
  const { slope, halfWidth } = waldLines(threshold)
  const regrow = Math.floor(slope * tested - halfWidth)
  const keep = Math.ceil(slope * tested + halfWidth)
  return {
    tested,
    regrowAtMost: regrow < 0 ? null : regrow,
    keepAtLeast: keep > tested ? null : keep,
    confidence: 'computed',
  }
}

/** The two lines of Wald's test: germinated = slope x tested -/+ half the width, in seeds. */
function waldLines(threshold: number): { readonly slope: number; readonly halfWidth: number } {
  const evidence = PUBLISHED_HALF_WIDTH * (logOdds(0.9) - logOdds(0.85))
  const good = threshold + (1 - threshold) / 3
  const apart = logOdds(good) - logOdds(threshold)
  return { slope: Math.log((1 - threshold) / (1 - good)) / apart, halfWidth: evidence / apart }
}

/** How a staged test ends, exactly, where each seed germinates with the chance `alive`. */
export function stagedOutcome(plan: StagedPlan, alive: number): StagedOutcome {
  const step = binomialChances(plan.groupSize, alive)
  let going = new Map([[0, 1]])
  let regrow = 0
  let keep = 0
  let seeds = 0
  for (const stage of plan.stages) {
    const next = new Map<number, number>()
    for (const [before, chance] of going) {
      seeds += chance * plan.groupSize
      for (const [more, stepChance] of step.entries()) {
        const now = before + more
        if (stage.regrowAtMost !== null && now <= stage.regrowAtMost) regrow += chance * stepChance
        else if (stage.keepAtLeast !== null && now >= stage.keepAtLeast) keep += chance * stepChance
        else next.set(now, (next.get(now) ?? 0) + chance * stepChance)
      }
    }
    going = next
  }
  const undecided = [...going.values()].reduce((sum, chance) => sum + chance, 0)
  return {
    alive,
    regrow: probability(regrow),
    keep: probability(keep),
    undecided: probability(undecided),
    seeds,
  }
}

/** What the stages of a test come to so far. */
export interface StagedDecision {
  readonly kind: 'regrow' | 'keep' | 'go-on' | 'undecided'
  /** The step of the plan that decides now. */
  readonly now: Stage
  /** The step after the next group; null: there is none. */
  readonly next: Stage | null
}

/**
 * What a staged test says after `tested` seeds in all, of which `germinated` did, 0 <= germinated <= tested.
 *
 * Stages need not be alike: between the steps of the published table the same lines decide, which give each of its rows.
 * Undecided once as many seeds were tested as nine groups hold. Throws RangeError for counts that cannot be.
 */
export function stagedDecision(
  threshold: number,
  groupSize: number,
  tested: number,
  germinated: number,
): StagedDecision {
  if (!(germinated >= 0 && germinated <= tested)) throw new RangeError(`Not ${germinated} of ${tested} seeds`)
  const { stages } = stagedPlan(threshold, groupSize, MOST_GROUPS * groupSize)
  const at = (seeds: number) =>
    stages.find((stage) => stage.tested === seeds) ?? computedStage(threshold, seeds)
  const now = at(tested)
  const next = tested < MOST_GROUPS * groupSize ? at(tested + groupSize) : null
  if (now.regrowAtMost !== null && germinated <= now.regrowAtMost) return { kind: 'regrow', now, next }
  if (now.keepAtLeast !== null && germinated >= now.keepAtLeast) return { kind: 'keep', now, next }
  return { kind: next === null ? 'undecided' : 'go-on', now, next }
}
