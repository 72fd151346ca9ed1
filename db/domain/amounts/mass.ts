/** A mass of seed in whole milligrams, zero or more. Integers, so that sums over a ledger are exact. */
export type Milligrams = number & { readonly __brand: 'Milligrams' }

/** Makes {@link Milligrams}. Throws RangeError for a fraction, a negative number or one too large to be exact. */
export function milligrams(value: number): Milligrams {
  if (!Number.isSafeInteger(value) || value < 0) throw new RangeError(`Not a mass in milligrams: ${value}`)
  return value as Milligrams
}

export type MassUnit = 'mg' | 'g' | 'kg' | 'oz' | 'lb'

/**
 * Milligrams in one unit.
 *
 * The pound is 0.45359237 kg by definition and the ounce is a sixteenth of it (international yard and pound
 * agreement of 1959; restated in NIST Special Publication 811, appendix B; values from memory, checked against
 * each other in tests/published).
 */
export const MILLIGRAMS_PER: Readonly<Record<MassUnit, number>> = {
  mg: 1,
  g: 1_000,
  kg: 1_000_000,
  oz: 28_349.523125,
  lb: 453_592.37,
}

/** Converts a number of `unit` to the nearest whole milligram. Throws RangeError as {@link milligrams} does. */
export function massFrom(value: number, unit: MassUnit): Milligrams {
  return milligrams(Math.round(value * MILLIGRAMS_PER[unit]))
}

/** The same mass as a number of `unit`, not rounded. */
export function massIn(mass: Milligrams, unit: MassUnit): number {
  return mass / MILLIGRAMS_PER[unit]
}
