import Database from 'better-sqlite3'

export type Sqlite = Database.Database

/** How long a connection waits for another process that holds the file, milliseconds. */
const BUSY_TIMEOUT_MS = 5_000

const OLDEST_SQLITE = '3.51.3'

/** Every setting of a connection that may write, and the value it must read back as. */
const SETTINGS: readonly (readonly [pragma: string, set: string, readBack: string | number])[] = [
  ['trusted_schema', 'OFF', 0],
  ['cell_size_check', 'ON', 1],
  ['mmap_size', '0', 0],
  ['foreign_keys', 'ON', 1],
  ['synchronous', 'EXTRA', 3],
  ['journal_mode', 'DELETE', 'delete'],
  ['cache_size', '-65536', -65_536],
  ['temp_store', 'MEMORY', 2],
  ['busy_timeout', String(BUSY_TIMEOUT_MS), BUSY_TIMEOUT_MS],
  ['secure_delete', 'ON', 1],
  // Only macOS has a stronger sync than fsync; elsewhere the setting reads back the same and does nothing.
  ['fullfsync', 'ON', 1],
]

const NOT_FOR_READERS = new Set(['journal_mode', 'secure_delete'])

/** Opens SQLite on a file with every setting made and read back. A misspelt or refused pragma is silent otherwise. */
export function connect(file: string, access: 'write' | 'read', mustExist: boolean): Sqlite {
  const sqlite = new Database(file, {
    readonly: access === 'read',
    fileMustExist: mustExist,
    timeout: BUSY_TIMEOUT_MS,
  })
  try {
    assertNewEnough(sqlite)
    for (const [pragma, set, readBack] of SETTINGS) {
      if (access === 'read' && NOT_FOR_READERS.has(pragma)) continue
      sqlite.pragma(`${pragma} = ${set}`)
      const actual = sqlite.pragma(pragma, { simple: true })
      if (actual !== readBack && !(pragma === 'mmap_size' && actual === undefined)) {
        throw new Error(`SQLite setting ${pragma} reads back ${String(actual)}, not ${readBack}`)
      }
    }
    return sqlite
  } catch (cause) {
    sqlite.close()
    throw cause
  }
}

function assertNewEnough(sqlite: Sqlite): void {
  const version = String(sqlite.prepare('SELECT sqlite_version()').pluck().get())
  const order = (text: string) => text.split('.').reduce((sum, part) => sum * 1_000 + Number(part), 0)
  if (order(version) < order(OLDEST_SQLITE)) {
    throw new Error(`SQLite ${version} has a known corruption fault; ${OLDEST_SQLITE} or later is needed`)
  }
}
