import type { NeedState } from '../needs/need.ts'

/**
 * What averting nothing certain is still worth, by state: a stock that is merely low is filled up when there is room.
 * Common practice, no source.
 */
const WORTH_OF_STATE: Readonly<Record<NeedState, number>> = {
  rescue: 0.3,
  regrow: 0.2,
  watch: 0.08,
  'well-stocked': 0.02,
  'none-left': 0.02,
  'not-kept': 0.02,
}

/** What growing an accession is worth: the chance of loss that it averts, twice where it is held nowhere else; none where no seed is left or it is not kept. */
export function worthOfGrowing(facts: {
  readonly state: NeedState
  readonly cost: number
  readonly onlySource: boolean
}): number {
  const averted =
    facts.state === 'none-left' || facts.state === 'not-kept' ? 0 : facts.cost * (facts.onlySource ? 2 : 1)
  return WORTH_OF_STATE[facts.state] + averted
}

/** The part of grow-outs that a grower brings back: one for, one against, and what was seen (Laplace's rule). */
export function reliabilityOf(took: number, broughtBack: number): number {
  return (broughtBack + 1) / (took + 2)
}
