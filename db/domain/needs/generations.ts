import { type Message, message } from '../../messages/message.ts'
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
  /** Sentence by sentence. */
  readonly told: readonly Message[]
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
  if (line.length === 0) return { line, effective: null, told: [message('needs.not-grown')] }
  if (sizes.length === 0) return { line, effective: null, told: [message('needs.plants-unnoted')] }
  const effective = effectivePopulation(sizes)
  return { line, effective, told: toldOfDrift(sizes, line.length - sizes.length, effective, wanted) }
}

function toldOfDrift(
  sizes: readonly number[],
  unknown: number,
  effective: number,
  wanted: number,
): readonly Message[] {
  return [
    message('needs.behaves', {
      generations: sizes.length,
      sizes: { list: sizes },
      effective: Number(effective.toFixed(effective < 10 ? 1 : 0)),
      parts: sizes.map((size) => `1/${size}`).join(' + '),
    }),
    message('needs.variation-left', { left: { part: variationLeft(sizes) } }),
    ...(unknown > 0 ? [message('needs.generations-unnoted', { count: unknown })] : []),
    ...(effective < wanted ? [message('needs.fewer-plants', { wanted })] : []),
  ]
}
