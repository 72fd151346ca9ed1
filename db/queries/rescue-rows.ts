import type { Sqlite } from '../migrations/connection.ts'
import { storagePlace } from '../schema/reference-tables.ts'
import { accession, lot } from '../schema/stock-tables.ts'
import { columns, expression, pick, type RowOf, select, selectValue } from './columns.ts'
import { notUndone } from './measurements.ts'
import { JOIN_SEED, SEED_NAMES } from './seed-names.ts'

const HERE = columns({
  lotId: lot.id,
  lotNumber: lot.number,
  ...pick(lot, 'accessionId', 'placeId', 'balanceCount'),
  ...SEED_NAMES,
})

export type LotHere = RowOf<typeof HERE>

/** Every lot with seed that is not held elsewhere, by number. */
export function lotsHere(sqlite: Sqlite): LotHere[] {
  return select(
    sqlite,
    HERE,
    (list) => `SELECT ${list} FROM lot ${JOIN_SEED}
     WHERE holds_seed = 1 AND role <> 'duplicate-elsewhere' ORDER BY lot.number`,
  ).all()
}

const HOLDERS = columns({
  accessionId: lot.accessionId,
  people: expression<number>('count(DISTINCT coalesce(person.merged_into_id, person.id))'),
})

/** How many people took seed of each accession from a day on, and may hold some; none where nobody did. */
export function holdersSince(sqlite: Sqlite, since: string): ReadonlyMap<number, number> {
  const rows = select(
    sqlite,
    HOLDERS,
    (list) => `SELECT ${list} FROM withdrawal JOIN person ON person.id = withdrawal.person_id
     JOIN movement ON movement.withdrawal_id = withdrawal.id JOIN lot ON lot.id = movement.lot_id
     WHERE withdrawal.on_date >= ? AND ${notUndone('withdrawal')} GROUP BY lot.accession_id`,
  ).all(since)
  return new Map(rows.map(({ accessionId, people }) => [accessionId, people]))
}

/** Accessions that no other seed can stand in for: landraces, and those with a story or their giver's words. */
export function hardToReplace(sqlite: Sqlite): ReadonlySet<number> {
  const ids = selectValue(
    sqlite,
    accession.id,
    (id) => `SELECT ${id} FROM accession WHERE story <> '' OR donor_words <> '' OR 'landrace' = (
       SELECT breeding_status FROM accession_policy WHERE accession_policy.accession_id = accession.id
         AND ${notUndone('accession_policy')} ORDER BY accession_policy.id DESC LIMIT 1)`,
  ).all()
  return new Set(ids)
}

const PLACE = columns({ placeId: storagePlace.id, ...pick(storagePlace, 'parentId', 'kind', 'path') })

/** Every storage place, by its id. */
export function placesById(sqlite: Sqlite): ReadonlyMap<number, RowOf<typeof PLACE>> {
  const rows = select(sqlite, PLACE, (list) => `SELECT ${list} FROM storage_place`).all()
  return new Map(rows.map((row) => [row.placeId, row]))
}

/** The last day on which the sheet for a fire was noted as printed, or null. */
export function fireSheetPrintedOn(sqlite: Sqlite): string | null {
  const day = selectValue(
    sqlite,
    expression<string | null>("max(json_extract(answer, '$.on'))"),
    (on) => `SELECT ${on} FROM entry WHERE operation = 'fire-sheet.mark-printed'
     AND NOT EXISTS (SELECT 1 FROM entry AS back WHERE back.undoes_id = entry.id)`,
  ).get()
  return day ?? null
}
