/**
 * The effective population over generations: the harmonic mean of their sizes, t / (1/N1 + ... + 1/Nt).
 *
 * For generations that do not overlap (Karlin 1968, American Naturalist 102:443-455). The smallest counts most: one narrow
 * year is felt for ever. Throws RangeError for no generations or a size under one.
 */
export function effectivePopulation(sizes: readonly number[]): number {
  checkSizes(sizes)
  return sizes.length / sizes.reduce((sum, size) => sum + 1 / size, 0)
}

/**
 * The part of the first generation's variation that is thought to be left: the product of (1 - 1 / 2N).
 *
 * For an ideal population that mates at random (Wright 1931, from memory): a self-fertilising variety had little to
 * lose, so it reads as too gloomy there. Throws RangeError for no generations or a size under one.
 */
export function variationLeft(sizes: readonly number[]): number {
  checkSizes(sizes)
  return sizes.reduce((left, size) => left * (1 - 1 / (2 * size)), 1)
}

function checkSizes(sizes: readonly number[]): void {
  if (sizes.length === 0 || sizes.some((size) => !(size >= 1))) {
    throw new RangeError(`Not the sizes of generations: ${sizes.join(', ')}`)
  }
}
