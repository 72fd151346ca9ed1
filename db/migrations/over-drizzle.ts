import { type BetterSQLite3Database, drizzle } from 'drizzle-orm/better-sqlite3'
import { tables } from '../schema/tables.ts'
import type { Sqlite } from './connection.ts'

// Beside connection.ts, since the thread of the backups connects without drizzle, which takes a second to load.

export type Drizzle = BetterSQLite3Database<typeof tables>

/** drizzle over a connection, with every table known to it. */
export function overDrizzle(sqlite: Sqlite): Drizzle {
  return drizzle(sqlite, { schema: tables })
}
