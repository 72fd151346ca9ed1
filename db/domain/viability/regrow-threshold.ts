import type { Threshold } from './band.ts'

/** From which part alive on the collection regrows, and of what that is a part. */
export interface RegrowPolicy {
  readonly viabilityThreshold: number
  readonly viabilityThresholdOf: Threshold['of']
}

/**
 * The threshold below which a lot is regrown: the accession's or the crop's own part where the keeper set one, else the
 * collection's, which is 85 % at first (IBPGR handbook of 1985, seen).
 */
export function regrowThreshold(own: number | null, policy: RegrowPolicy): Threshold {
  return { part: own ?? policy.viabilityThreshold, of: policy.viabilityThresholdOf }
}

/** A threshold as a part of all seed; `start`: the part that was alive at the start, null where nobody can tell. */
export function partOfAllSeed({ part, of }: Threshold, start: number | null): number {
  return of === 'the-start' ? part * (start ?? 1) : part
}
