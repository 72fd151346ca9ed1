import type { Sqlite } from '../migrations/connection.ts'
import { expression, selectValue } from './columns.ts'

const DATE_OF = { germination_result: 'tested_on', seed_weight: 'measured_on' } as const

/** The id of a lot's latest measurement whose entry was not taken back, or null. */
export function latestMeasurement(sqlite: Sqlite, table: keyof typeof DATE_OF, lotId: number): number | null {
  const latest = selectValue(
    sqlite,
    expression<number>('id'),
    (id) =>
      `SELECT ${id} FROM ${table} WHERE lot_id = ? AND ${notUndone(table)} ORDER BY ${DATE_OF[table]} DESC, id DESC LIMIT 1`,
  )
  return latest.get(lotId) ?? null
}

/** SQL that holds for rows of a table whose entry was not taken back. */
export function notUndone(table: string): string {
  return `NOT EXISTS (SELECT 1 FROM entry WHERE entry.undoes_id = ${table}.entry_id)`
}
