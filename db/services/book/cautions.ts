import { insertRow } from '../../queries/rows.ts'
import { lotCaution, lotCautionEnd } from '../../schema/stock-tables.ts'
import type { Writing } from './context.ts'

/** Says of a lot what it has to be careful about. */
export function setCaution(
  { sqlite, entryId }: Writing,
  caution: Omit<typeof lotCaution.$inferInsert, 'id' | 'entryId'>,
): void {
  insertRow(sqlite, lotCaution, { ...caution, entryId })
}

/** Says of a lot that a caution holds no more. */
export function writeCautionEnd(
  { sqlite, entryId }: Writing,
  end: Omit<typeof lotCautionEnd.$inferInsert, 'id' | 'entryId'>,
): void {
  insertRow(sqlite, lotCautionEnd, { ...end, entryId })
}
