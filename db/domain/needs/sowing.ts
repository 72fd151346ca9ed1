import { mostToRisk, type RescueLot } from './rescue.ts'
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

/** What to sow of which lots, and whether it is enough for one regrowing. */
export interface SowingAdvice {
  readonly lots: readonly { readonly lotId: number; readonly lotNumber: string; readonly seeds: number }[]
  readonly seeds: number
  readonly enough: boolean
}

/**
 * The seed to sow for so many plants: of the lot with most living seed, and where it is too small of the next ones too.
 *
 * Where all together are too few, of the best lot what can be risked at once ({@link mostToRisk}). Null where nothing lives.
 */
export function sowingAdvice(
  lots: readonly RescueLot[],
  plants: number,
  emergence: number,
): SowingAdvice | null {
  const living = lots
    .filter(({ seeds, viability }) => seeds * viability * emergence > 0)
    .toSorted((one, other) => other.seeds * other.viability - one.seeds * one.viability)
  const [best] = living
  if (best === undefined) return null
  const sown: { lotId: number; lotNumber: string; seeds: number }[] = []
  let wanted = plants
  for (const { lotId, lotNumber, seeds: held, viability } of living) {
    const seeds = Math.min(held, seedsToSow(wanted, viability, emergence) ?? held)
    sown.push({ lotId, lotNumber, seeds })
    wanted -= seeds * viability * emergence
    if (wanted <= 1e-6) return { lots: sown, seeds: sum(sown), enough: true }
  }
  const risked = { lotId: best.lotId, lotNumber: best.lotNumber, seeds: mostToRisk(best.seeds) }
  return { lots: [risked], seeds: risked.seeds, enough: false }
}

function sum(sown: SowingAdvice['lots']): number {
  return sown.reduce((seeds, lot) => seeds + lot.seeds, 0)
}
