import type { Sqlite } from '../migrations/connection.ts'
import { expression, selectValue } from './columns.ts'

const KEPT = expression<number>('coalesce(merged_into_id, id)')

/** Joins the kept record of the person that a column names, where one was joined into another. */
export function joinCanonicalPerson(alias: string, column: string): string {
  return `LEFT JOIN person AS ${alias}
    ON ${alias}.id = (SELECT coalesce(named.merged_into_id, named.id) FROM person AS named WHERE named.id = ${column})`
}

/** The id of the record that stands for a person: its own, or the one it was joined into. Undefined: not in the book. */
export function canonicalPersonId(sqlite: Sqlite, personId: number): number | undefined {
  return selectValue(sqlite, KEPT, (id) => `SELECT ${id} FROM person WHERE id = ?`).get(personId)
}

/** SQL that holds where a column names any record of the kept person whose id is bound twice. */
export function isRecordOf(column: string): string {
  return `${column} IN (SELECT ? UNION ALL SELECT id FROM person WHERE merged_into_id = ?)`
}
