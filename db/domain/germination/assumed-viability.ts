/** Where the viability of untested seed is taken from. */
export type AssumedBasis = 'federal-minimum' | 'state-minimum' | 'rule-of-thumb'

/** Where a lot's viability comes from. */
export type ViabilityBasis = 'tested' | 'forecast' | AssumedBasis

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
