/** How seed gives way: a check in the hand that tells a coarse class and no figure. */
export const BREAK_CLASSES = ['breaks', 'bends', 'soft'] as const
export type BreakClass = (typeof BREAK_CLASSES)[number]

/** The moisture that a class speaks for, percent of fresh weight. */
export interface MoistureSpan {
  readonly low: number
  readonly high: number
}

/**
 * The span of moisture that each class speaks for. Common practice, no source: big seed that shatters under a hammer and
 * thin seed that snaps is taken to hold about 8 % or less; seed that bends is not dry; seed that takes a thumbnail is moist.
 */
export const BREAK_SPANS: Readonly<Record<BreakClass, MoistureSpan>> = {
  breaks: { low: 4, high: 8 },
  bends: { low: 8, high: 13 },
  soft: { low: 13, high: 25 },
}
