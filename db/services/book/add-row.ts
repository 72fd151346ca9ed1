import type { SQLiteColumn, SQLiteTable } from 'drizzle-orm/sqlite-core'
import type { Reading } from './context.ts'

type Numbered = SQLiteTable & { readonly id: SQLiteColumn }

/** Adds a row to a table and answers the id that it got. */
export function addRow<T extends Numbered>(
  { db }: Pick<Reading, 'db'>,
  table: T,
  row: T['$inferInsert'],
): number {
  return Number(db.insert(table).values(row).returning({ id: table.id }).get()?.id)
}
