import { incompleteBeta } from './incomplete-beta.ts'

/** How a test leaves the question whether a lot is at least at its threshold. */
export type ThresholdVerdict = 'above' | 'likely-above' | 'open' | 'likely-below' | 'below'

/**
 * A verdict counts as decided from this probability on, either way: one side of the two-sided 95 % interval that is
 * shown beside it, so that the two do not contradict each other. Common practice, no source.
 */
export const SURE = 0.975
/** Fewer seeds never make a verdict sure: one or two say little of a lot, whichever way they go. Common practice, no source. */
const FEWEST_FOR_SURE = 3
/** Between this and {@link SURE} a verdict is called likely. Common practice, no source. */
const LIKELY = 0.7

/**
 * The probability that the part alive is at least `threshold`, after `sprouted` of `tested` sprouted.
 *
 * Prior: before the test every part from 0 to 1 is held to be equally likely, Beta(1, 1); so the posterior is
 * Beta(sprouted + 1, tested - sprouted + 1). `threshold` from 0 to 1.
 */
export function probabilityAtLeast(threshold: number, sprouted: number, tested: number): number {
  return 1 - incompleteBeta(threshold, sprouted + 1, tested - sprouted + 1)
}

/**
 * What a test says of the threshold.
 *
 * `ofLot` is the probability by the forecast of the lot, from all its tests, its age and how it was kept, for the day of the
 * test: where there is one it decides, as it is what the lot is told to be beside the verdict, and the test alone must be sure as well
 * for the verdict to be. Null: the test alone decides.
 */
export function thresholdVerdict(ofTest: number, tested: number, ofLot: number | null): ThresholdVerdict {
  const deciding = ofLot ?? ofTest
  const enough = tested >= FEWEST_FOR_SURE
  if (enough && Math.min(deciding, ofTest) >= SURE) return 'above'
  if (deciding >= LIKELY) return 'likely-above'
  if (enough && Math.max(deciding, ofTest) <= 1 - SURE) return 'below'
  return deciding <= 1 - LIKELY ? 'likely-below' : 'open'
}
