import type { CountingChoice, Tally } from './germination-test.ts'
import type { GerminationSpeed } from './speed.ts'
import { probabilityAtLeast, type ThresholdVerdict, thresholdVerdict } from './threshold-verdict.ts'
import type { Tolerance } from './tolerance.ts'
import { wilsonInterval } from './wilson.ts'

const percent = (part: number) => `${Math.round(100 * part)} %`

/** What the lot is thought to have been on the day of a test, and whether that day is long over. */
export interface LotOnTheDay {
  /** The probability by the lot's forecast that it was above its threshold; null where nothing is forecast. */
  readonly chanceAbove: number | null
  readonly longAgo: boolean
}

const VERDICTS: Readonly<Record<ThresholdVerdict, (threshold: string) => string>> = {
  above: (threshold) => `surely above ${threshold}`,
  'likely-above': (threshold) => `likely above ${threshold}, not yet sure`,
  open: (threshold) => `it may lie on either side of ${threshold}`,
  'likely-below': (threshold) => `likely below ${threshold}, not yet sure`,
  below: (threshold) => `surely below ${threshold}`,
}

/**
 * A result in one sentence: '17 of 20 sprouted: between 64 % and 95 %; likely above 75 %, not yet sure'.
 *
 * The interval is Wilson's, 95 %; the verdict that of {@link thresholdVerdict}. `threshold` from 0 to 1. Of a test that is
 * long over the verdict is told as of then.
 */
export function resultInWords(
  germinated: number,
  tested: number,
  threshold: number,
  lot: LotOnTheDay,
  counted?: { readonly tally: Tally; readonly choice: CountingChoice },
): string {
  const [low, high] = wilsonInterval(germinated, tested)
  const extra = counted === undefined ? '' : countedAsAlive(counted.tally, counted.choice)
  const what = extra === '' ? 'sprouted' : `counted as alive (${extra})`
  return `${germinated} of ${tested} ${what}: between ${percent(low)} and ${percent(high)}; ${verdictInWords(germinated, tested, threshold, lot)}`
}

/** Where the forecast lies on the other side of the threshold than the test alone, it is said what speaks against the test. */
function verdictInWords(
  germinated: number,
  tested: number,
  threshold: number,
  { chanceAbove, longAgo }: LotOnTheDay,
): string {
  const ofTest = probabilityAtLeast(threshold, germinated, tested)
  const verdict = thresholdVerdict(ofTest, tested, chanceAbove)
  const against = chanceAbove !== null && verdict !== 'open' && ofTest < 0.5 !== chanceAbove < 0.5
  const because = against ? 'by its age and all its tests ' : ''
  return `${longAgo ? 'then ' : ''}${because}${VERDICTS[verdict](percent(threshold))}`
}

function countedAsAlive(tally: Tally, choice: CountingChoice): string {
  const hard = choice.hard && tally.hard > 0 ? [`${tally.hard} hard`] : []
  const fresh = choice.fresh && tally.fresh > 0 ? [`${tally.fresh} dormant`] : []
  if (hard.length + fresh.length === 0) return ''
  return [`${tally.normal} sprouted`, ...hard, ...fresh].join(', ')
}

/** How hard and dormant seed was counted, in a sentence; empty where there was none. */
export function choiceInWords(tally: Tally, choice: CountingChoice): string {
  const one = (count: number, name: string, counted: boolean) =>
    count === 0 ? [] : [`${count} ${name} counted as ${counted ? 'alive' : 'not germinated'}`]
  const parts = [
    ...one(tally.hard, 'hard', choice.hard),
    ...one(tally.fresh, 'dormant (fresh)', choice.fresh),
  ]
  return parts.length === 0 ? '' : `By the keeper’s choice: ${parts.join('; ')}.`
}

/** How well the replicates agree, in a sentence, with what to do. */
export function toleranceInWords(tolerance: Tolerance): string {
  if (tolerance.kind === 'not-judged') return NOT_JUDGED[tolerance.because]
  const outside = tolerance.kind === 'outside'
  if (tolerance.by === 'table') {
    const found = `The replicates lie ${tolerance.range} points apart, ${tolerance.allowed} are allowed at ${tolerance.mean} %`
    return outside ? `${found}: repeat the test.` : `${found}: they agree.`
  }
  const chance = tolerance.chance < 0.001 ? 'under 0.1 %' : `${(100 * tolerance.chance).toFixed(1)} %`
  const how = `the published table is only for two or four replicates of 100, so this is a chi-squared comparison: chance alone differs as much in ${chance} of tests`
  return outside
    ? `The replicates differ too much; repeat the test (${how}).`
    : `The replicates agree (${how}).`
}

const NOT_JUDGED = {
  'one-replicate':
    'One replicate has nothing to be compared with: two or more show whether the test was laid evenly.',
  'too-few-seeds':
    'Too few seeds to say whether the replicates agree: the published table is for replicates of 100.',
  'all-alike': 'The replicates are all alike.',
} as const

/** How fast it went, in a sentence. */
export function speedInWords(speed: GerminationSpeed): string {
  const days = (value: number) => `${value.toFixed(1)} days`
  const half = speed.halfDays === null ? '' : `, half of them by ${days(speed.halfDays)}`
  return `Seedlings came after ${days(speed.meanDays)} on average${half}, as counted.`
}
