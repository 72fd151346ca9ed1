import { probability } from '../shared/probability.ts'
import { logGamma } from './incomplete-beta.ts'

/** The chances of 0, 1, ... `trials` successes where each has the chance `part`, 0 to 1. */
export function binomialChances(trials: number, part: number): readonly number[] {
  return Array.from({ length: trials + 1 }, (_, hits) => {
    if (part === 0 || part === 1) return hits === trials * part ? 1 : 0
    const ways = logGamma(trials + 1) - logGamma(hits + 1) - logGamma(trials - hits + 1)
    return probability(Math.exp(ways + hits * Math.log(part) + (trials - hits) * Math.log1p(-part)))
  })
}
