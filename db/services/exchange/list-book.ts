import { CropNames, type NamedCrop } from '../../domain/crops/crop-names.ts'
import { fold } from '../../domain/shared/fold.ts'
import { NearNames } from '../../domain/shared/near-names.ts'
import { everydayNames } from '../../migrations/crop-table.ts'
import {
  giftsByNumber,
  type KnownCrop,
  type KnownGift,
  knownGifts,
  knownNames,
  type NumberedGift,
} from '../../queries/list-rows.ts'
import type { Reading } from '../book/context.ts'
import { NewNames } from './list-new-names.ts'

/** One thing that a name in a list can stand for. */
export interface Named {
  readonly id: number
  readonly name: string
  /** What tells it apart from others of its name. */
  readonly apart: string
  /** The crop that a variety is of; empty for all else. */
  readonly cropId: string
}

export type ListCrop = KnownCrop & NamedCrop

/** What of the book a list's names are looked up in. */
export interface ListBook {
  readonly crops: ReadonlyMap<string, ListCrop>
  readonly cropNames: CropNames<ListCrop>
  readonly varieties: Names
  readonly people: Names
  readonly places: Names
  /** What earlier rows of the list brought: varieties by their crop, people by their town. */
  readonly brought: { readonly varieties: NewNames; readonly people: NewNames }
  readonly numbered: ReadonlyMap<string, readonly NumberedGift[]>
  /** By variety, donor and harvest: see `giftKey`. */
  readonly gifts: ReadonlyMap<string, readonly KnownGift[]>
}

/** Names of one kind: those that are the same once folded, and those that are near. */
export interface Names {
  readonly same: ReadonlyMap<string, readonly Named[]>
  readonly near: NearNames<Named>
}

/** Gathers all that a list is held against. */
export function listBook(reading: Reading): ListBook {
  const { crops: known, varieties, people, places } = knownNames(reading.sqlite)
  const crops = known.map((crop) => ({
    ...crop,
    commonName: crop.commonName,
    ...everydayNames(crop.id),
  }))
  return {
    crops: new Map(crops.map((crop) => [crop.id, crop])),
    cropNames: new CropNames(crops),
    varieties: namesFrom(
      varieties,
      ({ cropId, name }) => [[withinCrop(cropId, name), name]],
      () => '',
    ),
    people: namesFrom(
      people,
      ({ name }) => [[name, name]],
      ({ town }) => town,
    ),
    places: namesFrom(
      places,
      ({ name, path }) => [
        [name, name],
        [path, path],
      ],
      ({ path }) => path,
    ),
    brought: { varieties: new NewNames(), people: new NewNames() },
    numbered: giftsByNumber(reading.sqlite),
    gifts: Map.groupBy(knownGifts(reading.sqlite), (gift) =>
      giftKey(gift.varietyId, gift.donorId, gift.harvestFrom, gift.harvestTo),
    ),
  }
}

/** By what gifts of the book are found that may be the one of a row. */
export function giftKey(...facts: readonly [number, number | null, number | null, number | null]): string {
  return facts.join(' ')
}

/** A variety's name with its crop before it, so that a name is looked for among its own crop's only. */
export function withinCrop(cropId: string, name: string): string {
  return `${cropId} ${name}`
}

function namesFrom<R extends { readonly id: number; readonly name: string; readonly cropId?: string }>(
  rows: readonly R[],
  /** What a row is found by: what must be the same, and what may be near. */
  callsOf: (row: R) => readonly (readonly [string, string])[],
  apartOf: (row: R) => string,
): Names {
  const same = new Map<string, Named[]>()
  const near = new NearNames<Named>()
  const made = new Map<number, Named>()
  for (const row of rows) {
    const named = made.get(row.id) ?? {
      id: row.id,
      name: row.name,
      apart: apartOf(row),
      cropId: row.cropId ?? '',
    }
    made.set(row.id, named)
    for (const [whole, loose] of callsOf(row)) {
      const key = fold(whole)
      const kept = same.get(key) ?? []
      if (!kept.includes(named)) same.set(key, [...kept, named])
      near.add(loose, named)
    }
  }
  return { same, near }
}
