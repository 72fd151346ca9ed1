import { type KeepingPolicy, seedsForOneRegrowing } from './what-to-keep.ts'

/**
 * Seeds to sow for so many plants: plants / (viability x emergence), rounded up; null where nothing can come up.
 *
 * `viability` and `emergence` are parts, 0 to 1: of the seeds that are alive, and of the living ones that become plants.
 */
export function seedsToSow(plants: number, viability: number, emergence: number): number | null {
  if (viability * emergence <= 0) return null
  return Math.ceil(plants / (viability * emergence) - 1e-6)
}

/** Full regrowings that so many living seeds still make. */
export function regrowingsLeft(living: number, policy: KeepingPolicy): number {
  return Math.floor(living / seedsForOneRegrowing(policy))
}
