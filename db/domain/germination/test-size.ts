import { probability } from '../shared/probability.ts'
import { binomialChances } from './binomial.ts'
import { probabilityAtLeast, thresholdVerdict } from './threshold-verdict.ts'

/** The most seeds that a test is planned with; the size of a laboratory's test (7 CFR 201.54: seen). */
export const LARGEST_TEST = 400
/** A test that decides this often is called one that will probably decide. Common practice, no source. */
export const PROBABLY = 0.8

/** Sizes that are shown beside one another. */
const SHOWN_SIZES = [10, 20, 25, 40, 50, 100, 200, 400]

/** What a test of one size would do. */
export interface TestSize {
  readonly seeds: number
  /** The chance that it tells surely whether the lot is above or below its threshold. */
  readonly decides: number
  /** The fewest that must sprout to be sure that the lot is above; null where no result is enough. */
  readonly sureAboveFrom: number | null
  /** The most that may sprout to be sure that it is below; null where no result is enough. */
  readonly sureBelowTo: number | null
}

/** How many seeds to spend on finding out whether a lot is above its threshold. */
export interface TestSizes {
  /** The smallest that will probably decide; null where none that the lot can bear does. */
  readonly smallest: TestSize | null
  readonly shown: readonly TestSize[]
}

/**
 * What a test of some seeds would do, if the part alive really is `expected`.
 *
 * Decided means that {@link thresholdVerdict} of the test alone is sure, either way. Seeds are taken
 * as independent draws; in a small lot they are not quite, which makes a test a little better than shown.
 */
export function testOfSize(seeds: number, threshold: number, expected: number): TestSize {
  const results = Array.from({ length: seeds + 1 }, (_, sprouted) => sprouted)
  const verdict = (sprouted: number) =>
    thresholdVerdict(probabilityAtLeast(threshold, sprouted, seeds), seeds, null)
  const above = results.find((sprouted) => verdict(sprouted) === 'above') ?? null
  const below = results.findLast((sprouted) => verdict(sprouted) === 'below') ?? null
  const chances = binomialChances(seeds, expected)
  const decides = chances.reduce(
    (sum, chance, sprouted) =>
      (above !== null && sprouted >= above) || (below !== null && sprouted <= below) ? sum + chance : sum,
    0,
  )
  return { seeds, decides: probability(decides), sureAboveFrom: above, sureBelowTo: below }
}

/**
 * The smallest test that will probably decide, and usual sizes beside it, none beyond what the lot holds.
 *
 * `threshold` and `expected` are parts from 0 to 1, `available` whole seeds.
 */
export function testSizes(available: number, threshold: number, expected: number): TestSizes {
  const most = Math.min(available, LARGEST_TEST)
  const sized = (seeds: number) => testOfSize(seeds, threshold, expected)
  return {
    smallest: firstThatDecides(most, sized),
    shown: SHOWN_SIZES.filter((seeds) => seeds <= most).map(sized),
  }
}

function firstThatDecides(most: number, sized: (seeds: number) => TestSize): TestSize | null {
  for (let seeds = 1; seeds <= most; seeds += 1) {
    const test = sized(seeds)
    if (test.decides >= PROBABLY) return test
  }
  return null
}
