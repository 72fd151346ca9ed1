import { PLACE_KINDS, type PlaceKind } from '../shared/closed-sets.ts'

/** What of an accession decides what would be lost with the seed that lies here. */
export interface RescueFacts {
  readonly accessionId: number
  /** Whether no other accession here holds living seed of its variety. */
  readonly lastOfVariety: boolean
  /** Whether a safety duplicate of it lies elsewhere. */
  readonly elsewhere: boolean
  /** People who took some of it of late, and may grow it still. */
  readonly holders: number
  /** A landrace, or seed with its giver's story: no other seed can stand in for it. */
  readonly hardToReplace: boolean
  /** The places, or what is carried of them, in which its living seed lies. */
  readonly places: readonly number[]
}

/** How much more is lost by each; ours, so that none of the lesser ones outweighs two of the greater. */
const LAST_OF_VARIETY = 8
const HARD_TO_REPLACE = 2
/** What is left of a loss where somebody else holds seed of it: the journey, and what they hold may fail. */
const WITH_DUPLICATE = 0.05
/** Each person who may grow it still makes it so much less likely to be lost. */
const WITH_A_HOLDER = 0.6

/**
 * What would be lost if all of an accession's seed here burned, 1 being a plain accession of a variety that others here
 * hold too.
 *
 * That a library has a plan for fire and flood: FAO Genebank Standards 2014, 4.10.1 (from memory). That what is held nowhere
 * else comes first follows from 4.9.1 there, a duplicate of every original sample far away (from memory). The figures are ours.
 */
export function lossOf({ lastOfVariety, elsewhere, holders, hardToReplace }: RescueFacts): number {
  return (
    (lastOfVariety ? LAST_OF_VARIETY : 1) *
    (hardToReplace ? HARD_TO_REPLACE : 1) *
    (elsewhere ? WITH_DUPLICATE : 1) *
    WITH_A_HOLDER ** holders
  )
}

/** A place to carry out. */
export interface RescueStop<T extends RescueFacts> {
  readonly place: number
  /** What is saved by carrying it, after all places before it were carried: not less than the next one's. */
  readonly saves: number
  /** What is saved with it and lies in no place before it, the greatest loss first. */
  readonly accessions: readonly T[]
}

/**
 * The places in the order in which to carry them out: each time the one that saves most of what is not saved yet.
 *
 * Seed of an accession in two places is saved with the first of them. Where two places save the same, the one with the
 * lower number comes first, so that two sheets of one day are alike.
 */
export function rescueOrder<T extends RescueFacts>(accessions: readonly T[]): RescueStop<T>[] {
  const inPlace = new Map<number, Set<T>>()
  for (const accession of accessions)
    for (const place of accession.places) inPlace.set(place, (inPlace.get(place) ?? new Set()).add(accession))
  const stops: RescueStop<T>[] = []
  for (;;) {
    const [next] = [...inPlace]
      .filter(([, there]) => there.size > 0)
      .map(([place, there]) => ({ place, there, saves: total(there) }))
      .toSorted((a, b) => b.saves - a.saves || a.place - b.place)
    if (next === undefined) return stops
    const accessions = [...next.there].toSorted(
      (a, b) => lossOf(b) - lossOf(a) || a.accessionId - b.accessionId,
    )
    stops.push({ place: next.place, saves: next.saves, accessions })
    for (const there of inPlace.values()) for (const saved of accessions) there.delete(saved)
  }
}

/** Rounded, since sums of the same losses in another order differ in their last digits. */
function total(accessions: Iterable<RescueFacts>): number {
  const sum = [...accessions].reduce((before, accession) => before + lossOf(accession), 0)
  return Math.round(1e9 * sum) / 1e9
}

/** A storage place in the tree of places. */
export interface PlaceInTree {
  readonly placeId: number
  readonly parentId: number | null
  readonly kind: PlaceKind
}

/** From the shelf down, what stands inside one is carried with it; rooms, cupboards, fridges and freezers stay. */
const CARRIED: ReadonlySet<PlaceKind> = new Set(PLACE_KINDS.slice(PLACE_KINDS.indexOf('shelf')))

/** What is carried when a place is: the shelf or the outermost box around it, or the place itself. */
export function carriedWith(placeId: number, places: ReadonlyMap<number, PlaceInTree>): number {
  const place = places.get(placeId)
  const around = place?.parentId == null ? undefined : places.get(place.parentId)
  if (place === undefined || around === undefined) return placeId
  return CARRIED.has(place.kind) && CARRIED.has(around.kind) ? carriedWith(around.placeId, places) : placeId
}
