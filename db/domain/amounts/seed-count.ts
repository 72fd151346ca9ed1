/** A whole number of seeds (or of the counted unit of the crop, such as beet clusters), zero or more. */
export type SeedCount = number & { readonly __brand: 'SeedCount' }

/** Makes a {@link SeedCount}. Throws RangeError for a fraction, a negative number or one too large to be exact. */
export function seedCount(value: number): SeedCount {
  if (!Number.isSafeInteger(value) || value < 0) throw new RangeError(`Not a count of seeds: ${value}`)
  return value as SeedCount
}
