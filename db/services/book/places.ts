import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { message } from '../../messages/message.ts'
import { prepared } from '../../queries/prepared.ts'
import { insertRow, rowWith } from '../../queries/rows.ts'
import { storagePlace } from '../../schema/reference-tables.ts'
import { lotPlace } from '../../schema/stock-tables.ts'
import type { Reading, Writes, Writing } from './context.ts'

/** Between the names of a place's path. */
const WITHIN = ' / '

/** A storage place, or a refusal. */
export function placeOrRefuse(
  reading: Reading,
  placeId: number,
  field: string,
): typeof storagePlace.$inferSelect {
  const row = rowWith(reading.sqlite, storagePlace, { id: placeId })
  return row ?? refuse('not-found', message('book.no-place'), { field })
}

/** Every storage place by its path, with how many lots with seed lie in it. */
export function listPlaces(reading: Reading): Result<'place.list'> {
  const rows = prepared(
    reading.sqlite,
    `SELECT id AS placeId, parent_id AS parentId, name, path, kind,
       (SELECT count(*) FROM lot WHERE place_id = storage_place.id AND holds_seed = 1) AS lots
     FROM storage_place ORDER BY path`,
  ).all() as Result<'place.list'>['places']
  return { places: rows }
}

/** Adds a storage place. Refuses a path that is there already. */
export const createPlace: Writes<'place.create'> = (writing, input) => {
  const parent = input.parentId === null ? null : placeOrRefuse(writing, input.parentId, 'parentId')
  const path = parent === null ? input.name : parent.path + WITHIN + input.name
  if (rowWith(writing.sqlite, storagePlace, { path })) {
    refuse('already-there', message('book.place-there', { place: path }), {
      field: 'name',
      todo: message('book.place-there-todo'),
    })
  }
  const { parentId, name, kind } = input
  const placeId = insertRow(writing.sqlite, storagePlace, { parentId, name, kind, path })
  return { placeId, said: message('book.place-added', { place: path }), undoable: false }
}

/** Notes in a lot's history that it lies in a place from a day on. */
export function notePlace(writing: Writing, lotId: number, placeId: number, since: string): void {
  insertRow(writing.sqlite, lotPlace, { lotId, placeId, since, entryId: writing.entryId })
}
