/** The moisture that seed is dried to before it is closed in, percent of fresh weight: 5 to 8 is usual. Common practice, no source. */
export const USUAL_DRYING_GOAL = 7
/** Seed to be dried: its mass now in grams, its moisture now and the moisture wanted, percent of fresh weight. */
export interface Drying {
  readonly grams: number
  readonly from: number
  readonly to: number
}

export interface DryingPlan {
  /** Grams at which to stop: dry matter stays, only water goes. */
  readonly stopAt: number
  /** Grams of water that must go. */
  readonly water: number
  /** Grams of fresh drying gel that take up so much water. */
  readonly gel: number
}

/**
 * The part of its own weight that fresh gel is assumed to take up while the air around it stays dry enough to go on
 * drying seed. Common practice, no source: it can hold more, but then no longer dries.
 */
export const GEL_TAKES_UP = 0.1

/**
 * What seed weighs when it has dried to a goal: stopAt = grams (100 - from) / (100 - to), both on the fresh weight.
 *
 * The water balance is the one of rice drying as taught by the Rice Knowledge Bank (seen). Null where the seed is at the
 * goal already. Throws RangeError unless grams is above 0 and both moistures are from 0 to below 100.
 */
export function planDrying({ grams, from, to }: Drying): DryingPlan | null {
  if (!(grams > 0)) throw new RangeError(`Not a mass of seed: ${grams}`)
  for (const moisture of [from, to]) {
    if (!(moisture >= 0 && moisture < 100)) throw new RangeError(`Not a moisture: ${moisture}`)
  }
  if (from <= to) return null
  const stopAt = (grams * (100 - from)) / (100 - to)
  const water = grams - stopAt
  return { stopAt, water, gel: water / GEL_TAKES_UP }
}
