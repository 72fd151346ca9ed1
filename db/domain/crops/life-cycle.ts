/** How long a plant lives, from seed to seed. */
export const LIFE_CYCLES = ['annual', 'biennial', 'perennial'] as const

/**
 * Whether a crop flowers in its second season only, so that it takes two to bring seed back.
 *
 * By the crop table's words: 'annual or biennial' is grown as an annual.
 */
export function isBiennial(lifeCycle: string | null): boolean {
  return lifeCycle === 'biennial'
}
