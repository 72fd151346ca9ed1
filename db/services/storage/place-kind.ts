import { eq } from 'drizzle-orm'
import type { ParsedInput } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { kindChangeInWords } from '../../domain/climate/kind-words.ts'
import { type Message, message } from '../../messages/message.ts'
import { climateKinds } from '../../queries/forecast-rows.ts'
import { placeWithReadings } from '../../queries/lot-climate.ts'
import { lotsInPlace } from '../../queries/place-readings.ts'
import { placeChange, storagePlace } from '../../schema/reference-tables.ts'
import { refuseIfChangedLater } from '../book/changed-later.ts'
import type { Reads, Writes, Writing } from '../book/context.ts'
import { placeOrRefuse } from '../book/places.ts'
import { ASSUMED_CELSIUS } from './place-ageing.ts'

export const previewKind: Reads<'place.preview-kind'> = (reading, { placeId, kind }) => {
  const place = placeOrRefuse(reading, placeId, 'placeId')
  const kinds = new Map(climateKinds(reading.sqlite).map((row) => [row.placeId, row.kind]))
  const before = kinds.get(place.id) ?? 'room'
  const around = place.parentId === null ? 'room' : (kinds.get(place.parentId) ?? 'room')
  const after = kind === 'fridge' || kind === 'freezer' ? kind : around
  const pathOf = (source: number | null) =>
    source === null ? null : placeOrRefuse(reading, source, 'placeId').path
  return {
    words: kindChangeInWords({
      celsiusBefore: ASSUMED_CELSIUS[before],
      celsiusAfter: ASSUMED_CELSIUS[after],
      readFromBefore: pathOf(placeWithReadings(reading.sqlite, place.id)),
      readFromAfter: pathOf(placeWithReadings(reading.sqlite, place.id, kind)),
      lots: lotsInPlace(reading.sqlite, place.id, -1).length,
      beginsToFreeze: after === 'freezer' && before !== 'freezer',
    }),
  }
}

export const changeKind: Writes<'place.change-kind'> = (writing, input) => {
  const { words } = previewKind(writing, input)
  const place = placeOrRefuse(writing, input.placeId, 'placeId')
  if (place.kind === input.kind)
    refuse('same-kind', message('storage.same-kind', { place: place.path, kind: kindInWords(place.kind) }), {
      field: 'kind',
    })
  const { entryId } = writing
  writing.db
    .insert(placeChange)
    .values({ placeId: place.id, before: place.kind, after: input.kind, entryId })
    .run()
  writing.db.update(storagePlace).set({ kind: input.kind }).where(eq(storagePlace.id, place.id)).run()
  const said = message('storage.kind-said', {
    place: place.path,
    kind: kindInWords(input.kind),
    before: kindInWords(place.kind),
  })
  return { words, said, undoable: true }
}

function kindInWords(kind: ParsedInput<'place.change-kind'>['kind']): Message {
  return message(`storage.kind-${kind}`)
}

/** Puts places back to the kind they were before an entry. Refused when a later entry changed it again. */
export function restorePlaces(writing: Writing, entryId: number): void {
  for (const change of writing.db.select().from(placeChange).where(eq(placeChange.entryId, entryId)).all()) {
    refuseIfChangedLater(writing, 'place', change.placeId, change)
    writing.db
      .update(storagePlace)
      .set({ kind: change.before })
      .where(eq(storagePlace.id, change.placeId))
      .run()
  }
}
