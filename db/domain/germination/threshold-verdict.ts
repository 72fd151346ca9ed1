import { incompleteBeta } from './incomplete-beta.ts'

/** How a test leaves the question whether a lot is at least at its threshold. */
export type ThresholdVerdict = 'above' | 'likely-above' | 'open' | 'likely-below' | 'below'

/**
 * A verdict counts as decided from this probability on, either way: one side of the two-sided 95 % interval that is
 * shown beside it, so that the two do not contradict each other. Common practice, no source.
 */
export const SURE = 0.975
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

/** What that probability is called. */
export function thresholdVerdict(probability: number): ThresholdVerdict {
  if (probability >= SURE) return 'above'
  if (probability >= LIKELY) return 'likely-above'
  if (probability <= 1 - SURE) return 'below'
  return probability <= 1 - LIKELY ? 'likely-below' : 'open'
}
