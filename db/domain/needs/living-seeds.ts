/** A lot's seed as the book has it and how much of it is thought to be alive. */
export interface LotLife {
  readonly count: number
  /** Relative doubt of the count, about 95 %; 0 when every seed was counted. */
  readonly countDoubt: number
  /** Part alive, 0 to 1. */
  readonly viability: number
  /** The 90 % band of the part alive. */
  readonly viabilityRange: readonly [low: number, high: number]
}

/** Living seeds with the range that the count's and the test's doubt leave open. */
export interface LivingSeeds {
  readonly about: number
  readonly low: number
  readonly high: number
  readonly total: number
}

/**
 * So that 100 seeds, 57 % alive, are 57 and not 56 through the error of binary fractions, and 705 that are 70 % alive are as
 * many in three lots as in one.
 */
const EXACT = 1e-6

/**
 * Living seeds of several lots together: count x viability, summed.
 *
 * Each lot's low end and high end are added up as they stand: a cautious range, wider than for independent doubts, that
 * holds the truth at least nine times in ten.
 */
export function livingSeeds(lots: readonly LotLife[]): LivingSeeds {
  const sum = (of: (lot: LotLife) => number) => lots.reduce((total, lot) => total + of(lot), 0)
  const low = sum((lot) => lot.count * Math.max(0, 1 - lot.countDoubt) * lot.viabilityRange[0])
  const high = sum((lot) => lot.count * (1 + lot.countDoubt) * lot.viabilityRange[1])
  return {
    about: Math.round(sum((lot) => lot.count * lot.viability) + EXACT),
    low: Math.floor(low + EXACT),
    high: Math.max(0, Math.ceil(high - EXACT)),
    total: sum((lot) => lot.count),
  }
}
