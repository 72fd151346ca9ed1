import { probability } from '../shared/probability.ts'
import { logGamma } from './incomplete-beta.ts'

/** Seeds sown and germinated in one replicate. */
export interface ReplicateShare {
  readonly sown: number
  readonly germinated: number
}

/**
 * Pearson's X2 for whether replicates germinate alike: the sum of (germinated - sown p)^2 / (sown p (1 - p)), p over all.
 *
 * Degrees of freedom: replicates - 1. Zero where all or none germinated. Throws RangeError where nothing was sown.
 */
export function homogeneity(replicates: readonly ReplicateShare[]): {
  readonly chiSquared: number
  readonly degrees: number
} {
  const sown = replicates.reduce((sum, one) => sum + one.sown, 0)
  if (sown === 0) throw new RangeError('Replicates without seed have no share to compare')
  const share = replicates.reduce((sum, one) => sum + one.germinated, 0) / sown
  const spread = share * (1 - share)
  const chiSquared =
    spread === 0
      ? 0
      : replicates.reduce(
          (sum, one) => sum + (one.germinated - one.sown * share) ** 2 / (one.sown * spread),
          0,
        )
  return { chiSquared, degrees: replicates.length - 1 }
}

/** A tail with a smaller logarithm than this is lost beside the 1 that its series is taken from. */
const LOG_OF_NOTHING = -40

/**
 * The chance of an X2 at least this large where replicates differ by chance alone: the upper chi-squared tail.
 *
 * One minus the series of the lower incomplete gamma function, P(k/2, x/2) (DLMF 8.7.1, from memory).
 */
export function chiSquaredTail(chiSquared: number, degrees: number): number {
  if (chiSquared <= 0) return 1
  const half = degrees / 2
  const x = chiSquared / 2
  const front = half * Math.log(x) - x - logGamma(half)
  if (x > half && front < LOG_OF_NOTHING) return 0
  let term = 1 / half
  let sum = term
  for (let n = 1; term > sum * 1e-16; n += 1) {
    term *= x / (half + n)
    sum += term
  }
  return probability(1 - Math.exp(front) * sum)
}
