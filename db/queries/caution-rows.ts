import { alias } from 'drizzle-orm/sqlite-core'
import type { CautionHistory, Descent } from '../domain/cautions/inheritance.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { person } from '../schema/reference-tables.ts'
import { lotCaution, lotCautionEnd, lotParent } from '../schema/stock-tables.ts'
import { type Columns, columns, expression, pick, select, selectValue } from './columns.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'

const SET = columns({
  ...pick(lotCaution, 'lotId', 'caution', 'note', 'onDate'),
  entryId: expression<number>('coalesce(lot_caution.entry_id, 0)'),
})
const END = columns(pick(lotCautionEnd, 'lotId', 'caution', 'entryId'))
const BY = `CASE relation WHEN 'split' THEN 'split' WHEN 'merged' THEN 'merge' ELSE iif(EXISTS (
  SELECT 1 FROM seed_return WHERE seed_return.lot_id = lot_parent.lot_id AND grow_out_id IS NOT NULL), 'harvest', 'return') END`
const DESCENT: Columns<Descent> = columns({
  ...pick(lotParent, 'lotId', 'parentLotId'),
  by: expression<Descent['by']>(BY),
  entryId: expression<number>('coalesce(filled.entry_id, lot.entry_id)'),
})

/** The lots that some lots came from, and these themselves: `found (id)`. */
const FOUND = `WITH RECURSIVE found (id) AS (
    SELECT value FROM json_each(?)
    UNION SELECT parent_lot_id FROM found JOIN lot_parent ON lot_parent.lot_id = found.id)`

/** What was said of some lots and of all that they came from; what was taken back is not there. */
export function cautionHistory(sqlite: Sqlite, lotIds: readonly number[]): CautionHistory {
  const wanted = JSON.stringify(lotIds)
  const sets = select(
    sqlite,
    SET,
    (list) => `${FOUND} SELECT ${list} FROM found JOIN lot_caution ON lot_caution.lot_id = found.id
      WHERE ${notUndone('lot_caution')} ORDER BY caution, note, lot_caution.id`,
  ).all(wanted)
  if (sets.length === 0) return { descent: [], sets, ends: [] }
  const ends = select(
    sqlite,
    END,
    (list) => `${FOUND} SELECT ${list} FROM found JOIN lot_caution_end ON lot_caution_end.lot_id = found.id
      WHERE ${notUndone('lot_caution_end')}`,
  ).all(wanted)
  const descent = select(
    sqlite,
    DESCENT,
    (list) => `${FOUND} SELECT ${list} FROM found JOIN lot_parent ON lot_parent.lot_id = found.id
      JOIN lot ON lot.id = lot_parent.lot_id
      LEFT JOIN movement AS filled ON relation = 'merged' AND filled.lot_id = lot_parent.lot_id AND filled.kind = 'merge'
        AND EXISTS (SELECT 1 FROM movement AS poured
          WHERE poured.entry_id = filled.entry_id AND poured.lot_id = parent_lot_id AND poured.kind = 'merge')
      WHERE relation <> 'merged' OR filled.id IS NOT NULL AND ${notUndone('filled')}`,
  ).all(wanted)
  return { descent, sets, ends }
}

const SAID_BY = alias(person, 'said_by')

/** Who wrote an entry, by name as of now; empty where nobody was named, or the entry is of an older version. */
export function whoSaidOf(sqlite: Sqlite, entryId: number): string {
  const name = selectValue(
    sqlite,
    SAID_BY.name,
    (one) =>
      `SELECT ${one} FROM entry ${joinCanonicalPerson('said_by', 'entry.person_id')} WHERE entry.id = ?`,
  )
  return name.get(entryId) ?? ''
}
