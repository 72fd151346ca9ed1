import { livingSeedsFor } from './assurance.ts'

/** What decides how many living seeds of an accession must stay in the drawer. */
export interface KeepingPolicy {
  /** Regrowings that the stock must still hold; three by the genebank rule of thumb. */
  readonly regrowings: number
  /** Plants grown for seed in one regrowing. */
  readonly plants: number
  /** Part of the living seeds sown that become plants, above 0, at most 1. */
  readonly emergence: number
  /** The chance of so many plants that is asked, 0.5 to 0.99. Left out: seed is counted by its mean. */
  readonly assurance?: number | undefined
  /** What is not planted this season spoils, so that nothing is held back. */
  readonly spoils?: true
}

/**
 * Living seeds that one regrowing needs: plants / emergence, rounded up, and so many more as assure the plants.
 *
 * Living seeds already leave out the dead ones, so viability does not come in a second time.
 * Throws RangeError for a policy outside its bounds.
 */
export function seedsForOneRegrowing(policy: KeepingPolicy): number {
  const { plants, emergence, assurance } = policy
  const mean = seedsFor(plants, emergence)
  return assurance === undefined ? mean : Math.max(mean, livingSeedsFor(plants, emergence, assurance))
}

/**
 * Living seeds to keep: by the mean regrowings x plants / emergence, rounded up, 3 x 60 / 0.8 = 225; with an assurance so many
 * times what one regrowing needs, since each is sown in a year of its own.
 *
 * Quantity trigger: FAO Genebank Standards 2014, 4.4.1 (from memory); IBPGR handbook 1985, chapter 10: regrow when
 * seed is too little for three regeneration cycles (seen). Throws RangeError for a policy outside its bounds.
 */
export function seedsToKeep(policy: KeepingPolicy): number {
  const { regrowings, plants, emergence, assurance } = policy
  const mean = seedsFor(regrowings * plants, emergence)
  return assurance === undefined ? mean : regrowings * seedsForOneRegrowing(policy)
}

function seedsFor(plants: number, emergence: number): number {
  if (!(plants > 0 && emergence > 0 && emergence <= 1)) {
    throw new RangeError(`Not a keeping policy: ${plants} plants at ${emergence} emergence`)
  }
  return Math.ceil(plants / emergence - 1e-6)
}
