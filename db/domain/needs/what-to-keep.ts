/** What decides how many living seeds of an accession must stay in the drawer. */
export interface KeepingPolicy {
  /** Regrowings that the stock must still hold; three by the genebank rule of thumb. */
  readonly regrowings: number
  /** Plants grown for seed in one regrowing. */
  readonly plants: number
  /** Part of the living seeds sown that become plants, above 0, at most 1. */
  readonly emergence: number
}

/**
 * Living seeds that one regrowing needs: plants / emergence, rounded up.
 *
 * Living seeds already leave out the dead ones, so viability does not come in a second time.
 * Throws RangeError for a policy outside its bounds.
 */
export function seedsForOneRegrowing(policy: KeepingPolicy): number {
  return seedsFor(policy.plants, policy.emergence)
}

/**
 * Living seeds to keep: regrowings x plants / emergence, rounded up. 3 x 60 / 0.8 = 225.
 *
 * Quantity trigger: FAO Genebank Standards 2014, 4.4.1 (from memory); IBPGR handbook 1985, chapter 10: regrow when
 * seed is too little for three regeneration cycles (seen). Throws RangeError for a policy outside its bounds.
 */
export function seedsToKeep(policy: KeepingPolicy): number {
  return seedsFor(policy.regrowings * policy.plants, policy.emergence)
}

function seedsFor(plants: number, emergence: number): number {
  if (!(plants > 0 && emergence > 0 && emergence <= 1)) {
    throw new RangeError(`Not a keeping policy: ${plants} plants at ${emergence} emergence`)
  }
  return Math.ceil(plants / emergence - 1e-6)
}
