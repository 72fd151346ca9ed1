import { effectivePopulation, variationLeft } from './effective-population.ts'

/** A lot on its way through the generations. `parentLotId` null: it came in from elsewhere. */
export interface GenerationLot {
  readonly lotId: number
  readonly lotNumber: string
  readonly generation: number
  /** Plants that its seed was saved from; null where nobody noted them. */
  readonly plants: number | null
  readonly parentLotIds: readonly number[]
}

/** What the generations have done to the variety. */
export interface Drift {
  /** From the first generation grown here to the latest. */
  readonly line: readonly GenerationLot[]
  readonly effective: number | null
  readonly words: string
}

/**
 * The generations that led to a lot, with the effective population over them and what that means.
 *
 * Of several parents the one grown from fewest plants is followed: the narrowest way through. Lots that were only split
 * or joined keep their generation and do not count again. `wanted`: plants that one regrowing ought to have.
 */
export function driftTo(lotId: number, lots: readonly GenerationLot[], wanted: number): Drift {
  const byId = new Map(lots.map((lot) => [lot.lotId, lot]))
  const found = new Map<number, GenerationLot>()
  const seen = new Set<number>()
  let at = byId.get(lotId)
  while (at !== undefined && !seen.has(at.lotId)) {
    seen.add(at.lotId)
    if (at.generation > 0 && (found.get(at.generation)?.plants ?? null) === null) found.set(at.generation, at)
    at = at.parentLotIds
      .flatMap((id) => byId.get(id) ?? [])
      .toSorted((a, b) => (a.plants ?? Infinity) - (b.plants ?? Infinity))[0]
  }
  const line = [...found.values()].toSorted((a, b) => a.generation - b.generation)
  const sizes = line.flatMap(({ plants }) => plants ?? [])
  if (line.length === 0) return { line, effective: null, words: 'Not grown here yet.' }
  if (sizes.length === 0) {
    return {
      line,
      effective: null,
      words: 'Nobody noted how many plants the seed was saved from. Note them at Take back.',
    }
  }
  const effective = effectivePopulation(sizes)
  return { line, effective, words: driftInWords(sizes, line.length - sizes.length, effective, wanted) }
}

function driftInWords(sizes: readonly number[], unknown: number, effective: number, wanted: number): string {
  const rounded = Number(effective.toFixed(effective < 10 ? 1 : 0))
  const left = Math.round(100 * variationLeft(sizes))
  const parts = [
    `Over ${sizes.length === 1 ? 'one generation' : `${sizes.length} generations`} of ${sizes.join(', ')} plants it behaves like ${rounded} in each: ${sizes.length} / (${sizes.map((size) => `1/${size}`).join(' + ')}).`,
    `About ${left} % of its variation is left, were it to cross freely.`,
  ]
  if (unknown > 0)
    parts.push(`${unknown === 1 ? 'One generation is' : `${unknown} generations are`} not noted.`)
  if (effective < wanted) parts.push(`That is fewer than the ${wanted} wanted: grow more plants next time.`)
  return parts.join(' ')
}
