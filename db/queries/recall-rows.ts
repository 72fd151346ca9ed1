import type { Sqlite } from '../migrations/connection.ts'
import { entry } from '../schema/collection-tables.ts'
import { recall, recallLot, recallOutcome } from '../schema/recall-tables.ts'
import { lot } from '../schema/stock-tables.ts'
import { columns, expression, pick, type RowOf, select, selectValue } from './columns.ts'
import { notUndone } from './measurements.ts'
import { JOIN_SEED, SEED_NAMES } from './seed-names.ts'

const RECALL = columns({
  recallId: recall.id,
  on: recall.onDate,
  ...pick(recall, 'lotId', 'reason', 'advice'),
  lotNumber: lot.number,
  ...SEED_NAMES,
  lots: expression<number>('(SELECT count(*) FROM recall_lot WHERE recall_id = recall.id)'),
})

/** A recall that was not taken back. */
export type RecallRow = RowOf<typeof RECALL>

const FROM_RECALL = `FROM recall JOIN lot ON lot.id = recall.lot_id ${JOIN_SEED}`

/** Recalls that stand, latest first; of a lot, those that took it in. */
export function recallRows(sqlite: Sqlite, lotId: number | null): RecallRow[] {
  return select(
    sqlite,
    RECALL,
    (list) => `SELECT ${list} ${FROM_RECALL} WHERE ${notUndone('recall')}
     AND (@lot IS NULL OR recall.id IN (SELECT recall_id FROM recall_lot WHERE lot_id = @lot))
     ORDER BY recall.on_date DESC, recall.id DESC`,
  ).all({ lot: lotId })
}

/** One recall that stands, or undefined. */
export function recallRow(sqlite: Sqlite, recallId: number): RecallRow | undefined {
  return select(
    sqlite,
    RECALL,
    (list) => `SELECT ${list} ${FROM_RECALL} WHERE recall.id = ? AND ${notUndone('recall')}`,
  ).get(recallId)
}

const LOT = columns(pick(recallLot, 'lotId', 'affected'))

/** The lots that a recall took in, the one where something was found first. */
export function recallLots(sqlite: Sqlite, recallId: number) {
  return select(sqlite, LOT, (list) => `SELECT ${list} FROM recall_lot WHERE recall_id = ? ORDER BY id`).all(
    recallId,
  )
}

const OUTCOME = columns({
  outcomeId: recallOutcome.id,
  on: recallOutcome.onDate,
  ...pick(recallOutcome, 'lotId', 'outcome', 'note'),
  personId: expression<number | null>('coalesce(person.merged_into_id, person.id)'),
})

/** What came of a recall and was not taken back, oldest first; of joined people, the kept one's. */
export function recallOutcomes(sqlite: Sqlite, recallId: number) {
  return select(
    sqlite,
    OUTCOME,
    (list) => `SELECT ${list} FROM recall_outcome LEFT JOIN person ON person.id = recall_outcome.person_id
     WHERE recall_id = ? AND ${notUndone('recall_outcome')} ORDER BY recall_outcome.on_date, recall_outcome.id`,
  ).all(recallId)
}

/** What came of the recall that an entry made, where that stands: what, in a few words. */
export function restingOnRecall(sqlite: Sqlite, entryId: number): string | undefined {
  return selectValue(
    sqlite,
    entry.said,
    (said) => `SELECT ${said} FROM recall JOIN recall_outcome ON recall_id = recall.id
     JOIN entry ON entry.id = recall_outcome.entry_id
     WHERE recall.entry_id = ? AND ${notUndone('recall_outcome')} LIMIT 1`,
  ).get(entryId)
}
