import { chanceOfPlants, leastThat, plantsExpected, type SownSeed } from './assurance.ts'
import { type KeepingPolicy, seedsForOneRegrowing } from './what-to-keep.ts'

/** A lot that could be sown. */
export interface SowableLot extends SownSeed {
  readonly lotId: number
  readonly lotNumber: string
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
  /** The chance, 0 to 1, of all the plants wanted. */
  readonly chance: number
}

/** The most of the last seeds that is risked at once. Common practice, no source. */
const MOST_AT_RISK = 2 / 3

/** The most seeds of a last lot that are risked at once: two thirds, and at least one. */
function mostToRisk(seeds: number): number {
  return Math.max(1, Math.floor(seeds * MOST_AT_RISK))
}

/**
 * The seed to sow for one regrowing: of the lot with most living seed, and where it is too small of the next ones too; as many
 * as assure the plants, or where the lots do not hold so many, as many as make them on average.
 *
 * Where all together hold fewer living seeds than a full regrowing takes ({@link seedsForOneRegrowing}, by which an accession
 * stands at rescue too), two thirds of the best lot, so that one lost sowing does not end the variety; all where what is held back spoils. Null where nothing lives.
 */
export function sowingAdvice(lots: readonly SowableLot[], policy: KeepingPolicy): SowingAdvice | null {
  const { plants, emergence, assurance, spoils } = policy
  const living = lots
    .filter(({ seeds, viability }) => seeds * viability > 0)
    .toSorted((a, b) => b.seeds * b.viability - a.seeds * a.viability || b.viability - a.viability)
  const [best] = living
  if (best === undefined) return null
  const all = living.reduce((sum, { seeds, viability }) => sum + seeds * viability, 0)
  const enough = Math.round(all) >= seedsForOneRegrowing(policy)
  const isSure = (sown: readonly SownSeed[]) => chanceOfPlants(plants, sown, emergence) >= (assurance ?? 1)
  const isMean = (sown: readonly SownSeed[]) => plantsExpected(sown, emergence) >= plants - 1e-6
  const sown = enough
    ? ((assurance === undefined ? null : fewestOf(living, isSure)) ?? fewestOf(living, isMean) ?? living)
    : spoils
      ? living
      : [{ ...best, seeds: mostToRisk(best.seeds) }]
  return {
    lots: sown.map(({ lotId, lotNumber, seeds }) => ({ lotId, lotNumber, seeds })),
    seeds: sown.reduce((sum, { seeds }) => sum + seeds, 0),
    enough,
    expected: plantsExpected(sown, emergence),
    chance: chanceOfPlants(plants, sown, emergence),
  }
}

/** The fewest seeds that are enough, of the first lot and then of the next; null where all of all are not. */
function fewestOf(
  lots: readonly SowableLot[],
  isEnough: (sown: readonly SownSeed[]) => boolean,
): readonly SowableLot[] | null {
  const sown: SowableLot[] = []
  for (const lot of lots) {
    const seeds = leastThat((count) => isEnough([...sown, { ...lot, seeds: count }]), 1, lot.seeds)
    sown.push({ ...lot, seeds: seeds ?? lot.seeds })
    if (seeds !== null) return sown
  }
  return null
}
