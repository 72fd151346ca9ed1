import { migrate } from 'drizzle-orm/better-sqlite3/migrator'
import { assertSound, backUp, rowCounts } from './back-up.ts'
import type { Sqlite } from './connection.ts'
import { newestVersion, refuseTheFuture } from './file-format.ts'
import { overDrizzle } from './over-drizzle.ts'

/** Tables whose rows a migration moved into another table. */
const MOVED: Readonly<Record<string, string>> = { accession_caution: 'lot_caution' }

/**
 * Brings an open file to the newest schema: stop at a file from the future, back up, migrate, verify.
 *
 * Foreign keys are off outside the migrator's transaction, because inside it SQLite ignores the pragma and a rebuilt
 * table would take its children with it; row counts before and after are compared for the same reason.
 */
export async function migrateFile(
  sqlite: Sqlite,
  file: string,
  folder: string,
  now: Date,
): Promise<'up-to-date' | 'migrated'> {
  const version = Number(sqlite.pragma('user_version', { simple: true }))
  const newest = newestVersion(folder)
  refuseTheFuture(version, newest)
  if (version === newest) return 'up-to-date'
  if (version > 0) await backUp(sqlite, file, `before version ${newest}`, now)
  const before = rowCounts(sqlite)
  sqlite.pragma('foreign_keys = OFF')
  try {
    migrate(overDrizzle(sqlite), { migrationsFolder: folder })
  } finally {
    sqlite.pragma('foreign_keys = ON')
  }
  assertNoRowsLost(before, rowCounts(sqlite))
  assertSound(sqlite)
  sqlite.pragma(`user_version = ${newest}`)
  return 'migrated'
}

/** Refuses to go on where rows are gone. A table that was moved counts as rows of the one that it went into. */
function assertNoRowsLost(before: ReadonlyMap<string, number>, after: ReadonlyMap<string, number>): void {
  const expected = new Map<string, number>()
  for (const [table, rows] of before) {
    const now = after.has(table) ? table : (MOVED[table] ?? table)
    expected.set(now, (expected.get(now) ?? 0) + rows)
  }
  for (const [table, rows] of expected) {
    const kept = after.get(table)
    if (kept !== undefined && kept < rows)
      throw new Error(`The migration left ${kept} of ${rows} rows of ${table}`)
    if (kept === undefined && rows > 0) throw new Error(`The migration dropped ${table} with ${rows} rows`)
  }
}
