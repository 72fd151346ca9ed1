import type { Sqlite } from '../migrations/connection.ts'
import { germinationResult } from '../schema/germination-tables.ts'
import { duplicateTerms, lot, lotPlace } from '../schema/stock-tables.ts'
import { columns, expression, orNull, type RowOf, select } from './columns.ts'
import { notUndone } from './measurements.ts'

const TERMS = columns({
  lotId: lot.id,
  heldSince: lot.heldSince,
  contact: orNull(duplicateTerms.contact),
  agreement: orNull(duplicateTerms.agreement),
  agreementEnds: orNull(duplicateTerms.agreementEnds),
  conditions: orNull(duplicateTerms.conditions),
  nextLook: orNull(duplicateTerms.nextLook),
  testedOn: orNull(germinationResult.testedOn),
  tested: orNull(germinationResult.tested),
  sprouted: orNull(germinationResult.sprouted),
})

export type TermsRow = RowOf<typeof TERMS>

/** The safety duplicates with seed, or one lot if it is one, with the terms in force and the result in force; by number. */
export function duplicateRows(sqlite: Sqlite, lotId: number | null): TermsRow[] {
  return select(
    sqlite,
    TERMS,
    (list) => `SELECT ${list} FROM lot
     LEFT JOIN duplicate_terms ON duplicate_terms.id = (
       SELECT max(id) FROM duplicate_terms AS noted WHERE noted.lot_id = lot.id AND ${notUndone('noted')})
     LEFT JOIN germination_result ON germination_result.id = lot.germination_id
     WHERE role = 'duplicate-elsewhere' AND (lot.id = @lotId OR @lotId IS NULL AND holds_seed = 1) ORDER BY lot.number`,
  ).all({ lotId })
}

const HELD = columns({
  holder: expression<string>("json_extract(held.before, '$')"),
  since: expression<string>("json_extract(began.before, '$')"),
  until: lotPlace.since,
})

/** Who held a lot as a safety duplicate before it came home, latest first. */
export function heldBefore(sqlite: Sqlite, lotId: number) {
  return select(
    sqlite,
    HELD,
    (list) => `SELECT ${list} FROM lot_change AS held
     JOIN lot_change AS began ON began.entry_id = held.entry_id AND began.lot_id = held.lot_id AND began.field = 'heldSince'
     JOIN lot_place ON lot_place.entry_id = held.entry_id AND lot_place.lot_id = held.lot_id
     WHERE held.lot_id = ? AND held.field = 'heldBy' AND ${notUndone('held')} ORDER BY held.id DESC`,
  ).all(lotId)
}
