import { betaQuantile } from '../germination/incomplete-beta.ts'

const known = new Map<number, number>()

/**
 * How many standard errors to either side of a mean of few measurements hold it 95 times in 100: the 97.5 % point of
 * Student's t, from the beta distribution of v / (v + t squared) (DLMF 8.17, from memory). Throws RangeError for fewer than
 * one degree of freedom.
 */
export function studentQuantile(degrees: number): number {
  if (!(degrees >= 1)) throw new RangeError(`No Student’s t with ${degrees} degrees of freedom`)
  const kept = known.get(degrees)
  if (kept !== undefined) return kept
  const part = betaQuantile(0.05, degrees / 2, 0.5)
  const quantile = Math.sqrt((degrees * (1 - part)) / part)
  known.set(degrees, quantile)
  return quantile
}
