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
 */
export function seedsForOneRegrowing(policy: KeepingPolicy): number {
  return Math.ceil(policy.plants / policy.emergence - 1e-9)
}

/**
 * Living seeds to keep: regrowings x plants / emergence, rounded up. 3 x 60 / 0.8 = 225.
 *
 * Quantity trigger: FAO Genebank Standards 2014, 4.4.1 (from memory); IBPGR handbook 1985, chapter 10: regrow when
 * seed is too little for three regeneration cycles (seen).
 */
export function seedsToKeep(policy: KeepingPolicy): number {
  return Math.ceil((policy.regrowings * policy.plants) / policy.emergence - 1e-9)
}
