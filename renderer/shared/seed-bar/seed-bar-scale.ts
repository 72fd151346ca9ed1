import { scaleLinear } from 'd3-scale'

/** What a seed bar draws, in seeds (or the counted unit of the crop). */
export interface SeedBarFacts {
  /** Living seeds of what is shown. */
  readonly living: number
  /** Everything of what is shown, living and dead. */
  readonly total: number
  /** What must be kept for regrowing: the notch. */
  readonly keep: number
  /** The doubt round the living seeds, where it is known. */
  readonly low?: number
  readonly high?: number
  /** Living seeds of the same accession in other lots, drawn as an outline. */
  readonly elsewhere?: number
}

/** Where each part of a seed bar ends, as a part of its width from 0 to 1. */
export interface SeedBarParts {
  readonly living: number
  readonly elsewhere: number
  readonly total: number
  readonly notch: number
  readonly low: number
  readonly high: number
  /** The bar holds more than fits: it is drawn with a break. */
  readonly goesOn: boolean
}

const NOTCH_AT = 0.4

/**
 * Lays out a seed bar. The notch stands at the same place in every bar, so that a column of bars shows at a glance which
 * fall short; more than two and a half times what must be kept is drawn with a break.
 */
export function seedBarParts(facts: SeedBarFacts): SeedBarParts {
  const elsewhere = facts.elsewhere ?? 0
  const all = facts.total + elsewhere
  const width = facts.keep > 0 ? facts.keep / NOTCH_AT : Math.max(all, 1)
  const at = scaleLinear([0, width], [0, 1]).clamp(true)
  return {
    living: at(facts.living),
    elsewhere: at(facts.living + elsewhere),
    total: at(all),
    notch: facts.keep > 0 ? NOTCH_AT : 0,
    low: at(facts.low ?? facts.living),
    high: at(facts.high ?? facts.living),
    goesOn: all > width,
  }
}
