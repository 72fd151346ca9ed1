import { fold } from '../../domain/shared/fold.ts'
import { NearNames } from '../../domain/shared/near-names.ts'
import {
  giftsByNumber,
  type KnownCrop,
  type KnownGift,
  knownGifts,
  knownNames,
  type NumberedGift,
} from '../../queries/list-rows.ts'
import type { Reading } from '../context.ts'
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

/** What of the book a list's names are looked up in. */
export interface ListBook {
  readonly crops: ReadonlyMap<string, KnownCrop>
  /** The crops that each folded name is used for: squash is three. */
  readonly called: ReadonlyMap<string, ReadonlySet<KnownCrop>>
  readonly nearCrops: NearNames<KnownCrop>
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
  const { crops, varieties, people, places } = knownNames(reading.sqlite)
  const nearCrops = new NearNames<KnownCrop>()
  const called = new Map<string, Set<KnownCrop>>()
  for (const crop of crops) {
    for (const name of namesOf(crop)) {
      called.set(name, (called.get(name) ?? new Set()).add(crop))
      nearCrops.add(name, crop)
    }
  }
  return {
    crops: new Map(crops.map((crop) => [crop.id, crop])),
    called,
    nearCrops,
    varieties: namesFrom(
      varieties,
      ({ crop_id, name }) => [[withinCrop(crop_id, name), name]],
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
      giftKey(gift.variety_id, gift.donor_id, gift.harvest_from, gift.harvest_to),
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

/** All that a crop is called: its everyday names, singular and plural, its species and its short name. */
function namesOf(crop: KnownCrop): string[] {
  const words = [
    crop.id.replaceAll('-', ' '),
    ...crop.common_name.split(/[/()]/),
    crop.common_name,
    crop.species,
  ]
  const names = words.map(fold).filter((name) => name.length > 2)
  return [...new Set(names.flatMap((name) => [name, `${name}s`, `${name}es`, name.replace(/y$/, 'ies')]))]
}

function namesFrom<R extends { readonly id: number; readonly name: string; readonly crop_id?: string }>(
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
      cropId: row.crop_id ?? '',
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
