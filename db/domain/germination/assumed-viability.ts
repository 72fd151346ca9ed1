import { normalBelow, normalQuantile } from '../viability/normal.ts'

/** Where the viability of untested seed is taken from. */
export type AssumedBasis = 'federal-minimum' | 'state-minimum' | 'rule-of-thumb'

/** Where a lot's viability comes from; 'season': of pieces, which are sound until their season is over. */
export type ViabilityBasis = 'tested' | 'forecast' | 'season' | AssumedBasis

/** Half alive: for crops without a legal minimum. Common practice, no source; shown as assumed. */
export const CAUTIOUS_VIABILITY = 0.5

/**
 * The cautious part alive of untested seed of a crop: the least that US law lets be sold unmarked.
 *
 * 7 CFR 201.31 where the crop is listed, else a state rule (New Hampshire Agr 2203.01), else one half.
 */
export function assumedViability(crop: {
  readonly federalMinimumPercent: number | null
  readonly stateMinimumPercent: number | null
}): { readonly viability: number; readonly basis: AssumedBasis } {
  if (crop.federalMinimumPercent !== null) {
    return { viability: crop.federalMinimumPercent / 100, basis: 'federal-minimum' }
  }
  if (crop.stateMinimumPercent !== null) {
    return { viability: crop.stateMinimumPercent / 100, basis: 'state-minimum' }
  }
  return { viability: CAUTIOUS_VIABILITY, basis: 'rule-of-thumb' }
}

/** Half of a 90 % band in deviates, by the storage class of the crop: short up to 2 years, medium 3, long from 4 on. */
const HALF_BANDS = { short: 1.6, medium: 1.3, long: 1 } as const

/**
 * The 90 % band of an assumed part alive, above 0 and below 1, by the years that seed of the crop keeps; null: as for seed
 * that keeps shortest.
 *
 * A rule of thumb: the less seed of a crop keeps, the less is known of a lot that nobody tested. The classes are the crop
 * table's; how wide each is, is judgement, no source. Throws RangeError for a part that is not between 0 and 1.
 */
export function assumedBand(viability: number, storageYears: number | null): readonly [number, number] {
  const middle = normalQuantile(viability)
  const half = HALF_BANDS[storageClass(storageYears ?? 0)]
  return [normalBelow(middle - half), normalBelow(middle + half)]
}

function storageClass(years: number): keyof typeof HALF_BANDS {
  if (years >= 4) return 'long'
  return years >= 3 ? 'medium' : 'short'
}
