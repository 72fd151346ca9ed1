import { type KeepingPolicy, seedsForOneRegrowing } from './what-to-keep.ts'

/** A lot that could be sown: its seeds, and the part of them that is alive, 0 to 1. */
export interface SowableLot {
  readonly lotId: number
  readonly lotNumber: string
  readonly seeds: number
  readonly viability: number
}

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

/** What to sow of which lots, and what may come of it. */
export interface SowingAdvice {
  readonly lots: readonly { readonly lotId: number; readonly lotNumber: string; readonly seeds: number }[]
  readonly seeds: number
  /** Whether the lots together make a full regrowing; where they do not, the seeds are what may be risked. */
  readonly enough: boolean
  /** Plants to expect of them. */
  readonly expected: number
}

/** The most of the last seeds that is risked at once. Common practice, no source. */
const MOST_AT_RISK = 2 / 3

/** The most seeds of a last lot that are risked at once: two thirds, and at least one. */
function mostToRisk(seeds: number): number {
  return Math.max(1, Math.floor(seeds * MOST_AT_RISK))
}

/**
 * The seed to sow for one regrowing: of the lot with most living seed, and where it is too small of the next ones too.
 *
 * Where all together hold fewer living seeds than a full regrowing takes ({@link seedsForOneRegrowing}, by which an accession
 * stands at rescue too), two thirds of the best lot, so that one lost sowing does not end the variety. Null where nothing lives.
 */
export function sowingAdvice(lots: readonly SowableLot[], policy: KeepingPolicy): SowingAdvice | null {
  const { plants, emergence } = policy
  const living = lots
    .filter(({ seeds, viability }) => seeds * viability > 0)
    .toSorted((a, b) => b.seeds * b.viability - a.seeds * a.viability || b.viability - a.viability)
  const [best] = living
  if (best === undefined) return null
  const all = living.reduce((sum, { seeds, viability }) => sum + seeds * viability, 0)
  const enough = Math.round(all) >= seedsForOneRegrowing(policy)
  const sown: (SowableLot & { readonly sow: number })[] = []
  if (!enough) sown.push({ ...best, sow: mostToRisk(best.seeds) })
  let wanted = plants
  for (const lot of enough ? living : []) {
    if (wanted <= 1e-6) break
    const sow = Math.min(lot.seeds, seedsToSow(wanted, lot.viability, emergence) ?? lot.seeds)
    sown.push({ ...lot, sow })
    wanted -= sow * lot.viability * emergence
  }
  return {
    lots: sown.map(({ lotId, lotNumber, sow }) => ({ lotId, lotNumber, seeds: sow })),
    seeds: sown.reduce((sum, { sow }) => sum + sow, 0),
    enough,
    expected: sown.reduce((sum, { sow, viability }) => sum + sow * viability * emergence, 0),
  }
}
