import { insertRow } from '../../queries/rows.ts'
import { accessionPolicy } from '../../schema/stock-tables.ts'
import type { Writing } from './context.ts'

/** Says of an accession how it was bred and whether it is kept; holds in place of what was said before. */
export function setKeeping(
  { sqlite, entryId }: Writing,
  keeping: Omit<typeof accessionPolicy.$inferInsert, 'id' | 'entryId'>,
): void {
  insertRow(sqlite, accessionPolicy, { ...keeping, entryId })
}
