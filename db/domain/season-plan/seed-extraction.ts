/** How seed is got out of what it ripens in. */
export const SEED_EXTRACTIONS = [
  'dried-on-plant',
  'washed',
  'fermented',
  'after-ripened',
  'rubbed-out',
] as const
export type SeedExtraction = (typeof SEED_EXTRACTIONS)[number]

/** Families whose seed ripens in wet flesh. */
const WET_SEEDED = ['Solanaceae', 'Cucurbitaceae']

/** How seed of a crop is got out where nobody has said it: by its family. Common practice, no source. */
export function usualExtraction(family: string): SeedExtraction {
  return WET_SEEDED.includes(family) ? 'washed' : 'dried-on-plant'
}
