import type { Statement } from 'better-sqlite3'
import type { Sqlite } from '../migrations/connection.ts'

const statements = new WeakMap<Sqlite, Map<string, Statement<unknown[]>>>()

/**
 * A prepared statement, kept for the life of the connection.
 *
 * For the reads that a keeper waits for: preparing anew costs more than the read itself.
 */
export function prepared(sqlite: Sqlite, text: string): Statement<unknown[]> {
  const kept = statements.get(sqlite) ?? new Map<string, Statement<unknown[]>>()
  statements.set(sqlite, kept)
  const found = kept.get(text)
  if (found) return found
  const fresh = sqlite.prepare<unknown[]>(text)
  kept.set(text, fresh)
  return fresh
}
