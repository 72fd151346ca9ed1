import { type Column, getTableColumns, getTableName } from 'drizzle-orm'
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

/** The row of a table that has some values, by a statement prepared once; undefined where there is none. */
export function rowWith<T extends SQLiteTable>(
  sqlite: Sqlite,
  table: T,
  having: Partial<T['$inferSelect']>,
): T['$inferSelect'] | undefined {
  const columns = getTableColumns(table)
  const asked = Object.entries(having).map(([name, value]) => ({ column: columns[name] as Column, value }))
  const list = Object.values(columns).map(({ name }) => `"${name}"`)
  const where = asked.map(({ column }) => `"${column.name}" = ?`)
  const text = `SELECT ${list.join(', ')} FROM "${getTableName(table)}" WHERE ${where.join(' AND ')}`
  const row = prepared(sqlite, text).get(
    ...asked.map(({ column, value }) => column.mapToDriverValue(value)),
  ) as Record<string, unknown> | undefined
  if (row === undefined) return undefined
  const read = Object.entries(columns).map(([name, column]) => {
    const value = row[column.name]
    return [name, value === null ? null : column.mapFromDriverValue(value)]
  })
  return Object.fromEntries(read) as T['$inferSelect']
}
