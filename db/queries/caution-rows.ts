import type { CautionKind } from '../domain/cautions/caution-text.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { accessionCaution } from '../schema/stock-tables.ts'
import { columns, pick, type RowOf, select } from './columns.ts'
import { SHARES_SEED } from './need-rows.ts'

const CAUTION = columns(pick(accessionCaution, 'caution', 'note'))

/**
 * What the seed of some lots has to be careful about: what its gift has, what was said of a harvest when it came back, and
 * what holds for a lot that it was split off from or that was poured into it. `ofTheSeed` is not inherited by a harvest.
 */
export function cautionRows(
  sqlite: Sqlite,
  lotIds: readonly number[],
  ofTheSeed: readonly CautionKind[],
): RowOf<typeof CAUTION>[] {
  return select(
    sqlite,
    CAUTION,
    (list) => `WITH RECURSIVE seed (of_id) AS (
       SELECT value FROM json_each(@lotIds)
       UNION
       SELECT parent_lot_id FROM seed JOIN lot_parent ON lot_parent.lot_id = of_id WHERE ${SHARES_SEED})
     SELECT ${list} FROM seed JOIN lot ON lot.id = of_id
       JOIN accession_caution ON accession_caution.accession_id = lot.accession_id
     WHERE caution NOT IN (SELECT value FROM json_each(@ofTheSeed)) OR NOT EXISTS (
       SELECT 1 FROM lot_parent WHERE lot_parent.lot_id = of_id AND relation IN ('grown', 'split'))
     UNION
     SELECT caution, note FROM seed JOIN lot_caution ON lot_caution.lot_id = of_id
     ORDER BY caution, note`,
  ).all({ lotIds: JSON.stringify(lotIds), ofTheSeed: JSON.stringify(ofTheSeed) })
}
