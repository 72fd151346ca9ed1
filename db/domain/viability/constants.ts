import type { Span } from './span.ts'

/**
 * The constants of the seed viability equation for one crop, with how far they are to be trusted.
 *
 * KE and CW of one set belong together. A crop has the set of the species that it was fitted on and borrows none: sweet corn
 * does not take field maize's, as it is known to age faster (common practice, no source).
 */
export interface ViabilityConstants {
  /** What it was fitted on, as it is told. */
  readonly name: string
  readonly ke: number
  readonly cw: number
  readonly ch: number
  readonly cq: number
  /** Where the set was fitted, degrees C and percent of fresh weight; null where that is not known here. */
  readonly fittedCelsius: Span | null
  readonly fittedPercent: Span | null
  /** The published moisture below which drying no longer helps, percent of fresh weight; null: by the crop's oil. */
  readonly lowestPercent: number | null
  readonly source: string
  /** Whether the figures were seen in the source or recalled. */
  readonly confidence: 'seen' | 'from memory'
  readonly note: string
}

/** The moisture below which nothing is worked out where a crop's own limit is not known: judgement, see docs/sources. */
export const LOWEST_WORKING_PERCENT = 5
