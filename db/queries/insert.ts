import { getTableColumns, getTableName } from 'drizzle-orm'
import type { SQLiteTable } from 'drizzle-orm/sqlite-core'
import type { Sqlite } from '../migrations/connection.ts'
import { prepared } from './prepared.ts'

/**
 * Writes a row by a statement prepared once; what is not given gets its default. Answers the id, where the table has one.
 *
 * `unless`: leaves out a row that there is already.
 */
export function insertRow<T extends SQLiteTable>(
  sqlite: Sqlite,
  table: T,
  row: T['$inferInsert'],
  unless: '' | 'there' = '',
): number {
  const columns = getTableColumns(table)
  const given = Object.entries(row).flatMap(([name, value]) => {
    const column = columns[name]
    return column === undefined || value === undefined ? [] : [{ column, value }]
  })
  const names = given.map(({ column }) => `"${column.name}"`).join(', ')
  const text = `INSERT INTO "${getTableName(table)}" (${names}) VALUES (${given.map(() => '?').join(', ')})`
  const values = given.map(({ column, value }) => (value === null ? null : column.mapToDriverValue(value)))
  const { lastInsertRowid } = prepared(
    sqlite,
    unless === 'there' ? `${text} ON CONFLICT DO NOTHING` : text,
  ).run(...values)
  return Number(lastInsertRowid)
}
