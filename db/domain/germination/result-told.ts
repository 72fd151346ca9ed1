import { type Message, message } from '../../messages/message.ts'
import { type CountingChoice, NOTHING_COUNTED, type Tally } from './germination-test.ts'
import type { GerminationSpeed } from './speed.ts'
import { probabilityAtLeast, thresholdVerdict } from './threshold-verdict.ts'
import type { Tolerance } from './tolerance.ts'
import { wilsonInterval } from './wilson.ts'

/** What the lot is thought to have been on the day of a test, and whether that day is long over. */
export interface LotOnTheDay {
  /** The probability by the lot's forecast that it was above its threshold; null where nothing is forecast. */
  readonly chanceAbove: number | null
  readonly longAgo: boolean
}

/**
 * A result in one sentence: '17 of 20 sprouted: between 64 % and 95 %; likely above 75 %, not yet sure'.
 *
 * The interval is Wilson's, 95 %; the verdict that of {@link thresholdVerdict}. `threshold` from 0 to 1. Of a test that is
 * long over the verdict is told as of then.
 */
export function resultTold(
  germinated: number,
  tested: number,
  threshold: number,
  lot: LotOnTheDay,
  counted?: { readonly tally: Tally; readonly choice: CountingChoice },
): Message {
  const [low, high] = wilsonInterval(germinated, tested)
  const verdict = verdictTold(germinated, tested, threshold, lot)
  const facts = { germinated, tested, low: { part: low }, high: { part: high }, verdict }
  const { tally, choice } = counted ?? { tally: NOTHING_COUNTED, choice: { hard: false, fresh: false } }
  const hard = choice.hard ? tally.hard : 0
  const fresh = choice.fresh ? tally.fresh : 0
  return hard + fresh === 0
    ? message('germination.result', facts)
    : message('germination.result-counted', { ...facts, normal: tally.normal, hard, fresh })
}

/** Where the forecast lies on the other side of the threshold than the test alone, it is said what speaks against the test. */
function verdictTold(
  germinated: number,
  tested: number,
  threshold: number,
  { chanceAbove, longAgo }: LotOnTheDay,
): Message {
  const ofTest = probabilityAtLeast(threshold, germinated, tested)
  const verdict = thresholdVerdict(ofTest, tested, chanceAbove)
  const against = chanceAbove !== null && verdict !== 'open' && ofTest < 0.5 !== chanceAbove < 0.5
  return message('germination.verdict', {
    as: longAgo ? (against ? 'thenAll' : 'then') : against ? 'all' : 'now',
    verdict: message(`germination.verdict-${verdict}`, { threshold: { part: threshold } }),
  })
}

/** How hard and dormant seed was counted, in a sentence; empty where there was none. */
export function choiceTold(tally: Tally, choice: CountingChoice): Message | '' {
  const counted = (isAlive: boolean) => (isAlive ? 'alive' : 'not')
  const hard = message('germination.choice-hard', { count: tally.hard, counted: counted(choice.hard) })
  const fresh = message('germination.choice-fresh', { count: tally.fresh, counted: counted(choice.fresh) })
  const kinds = [...(tally.hard === 0 ? [] : [hard]), ...(tally.fresh === 0 ? [] : [fresh])]
  return kinds.length === 0 ? '' : message('germination.choice', { kinds: { list: kinds } })
}

/** How well the replicates agree, in a sentence, with what to do. */
export function toleranceTold(tolerance: Tolerance): Message {
  if (tolerance.kind === 'not-judged') return message(`germination.tolerance-${tolerance.because}`)
  const { kind } = tolerance
  if (tolerance.by === 'table') {
    const { range, allowed, mean } = tolerance
    return message(`germination.tolerance-table-${kind}`, { range, allowed, mean })
  }
  const rare = tolerance.chance < LEAST_CHANCE_TOLD
  return message(`germination.tolerance-chi-${kind}`, {
    rare: rare ? 'yes' : 'no',
    chance: toTenth(100 * (rare ? LEAST_CHANCE_TOLD : tolerance.chance)),
  })
}

const LEAST_CHANCE_TOLD = 0.001

function toTenth(value: number): number {
  return Math.round(10 * value) / 10
}

/** How fast it went, in a sentence. */
export function speedTold({ meanDays, halfDays }: GerminationSpeed): Message {
  const mean = toTenth(meanDays)
  return halfDays === null
    ? message('germination.speed', { mean })
    : message('germination.speed-half', { mean, half: toTenth(halfDays) })
}
