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

const WORDS: Readonly<Record<SeedExtraction, string>> = {
  'dried-on-plant':
    'Let pods and heads dry on the plant as long as the weather allows, and gather in several goes.',
  washed: 'Let the fruit ripen fully, take the seed out and wash it.',
  fermented:
    'Let the fruit ripen beyond eating, take the seed out with its juice, let it stand for two days, then wash it until the jelly is gone.',
  'after-ripened':
    'Let the fruit ripen on the plant until its skin is hard, then let it lie for three weeks before you open it: the seed fills up. Wash it.',
  'rubbed-out':
    'Let the fruit colour wholly and go soft, and rub the seed out dry. Hot ones burn skin and eyes: wear gloves.',
}

/** How to harvest a crop and get its seed out, in words for the grower. Common practice, no source. */
export function extractionInWords(extraction: SeedExtraction): string {
  return WORDS[extraction]
}
