/** Two lots that share seed: one was split off from the other, or poured into it. */
export interface SharedSeed {
  readonly lotId: number
  readonly parentLotId: number
}

/**
 * Which lots are of one origin: those that splitting and joining connect, however often, under the number of one of them.
 *
 * What comes from one seed lot is alive to one part, so that doubt of it is one doubt. A lot that shares no seed is its own
 * origin.
 */
export function originsOf(shared: readonly SharedSeed[]): (lotId: number) => number {
  const above = new Map<number, number>()
  const originOf = (lotId: number): number => {
    let at = lotId
    for (let next = above.get(at); next !== undefined; next = above.get(at)) at = next
    return at
  }
  for (const { lotId, parentLotId } of shared) {
    const [one, other] = [originOf(lotId), originOf(parentLotId)]
    if (one !== other) above.set(Math.max(one, other), Math.min(one, other))
  }
  return originOf
}
