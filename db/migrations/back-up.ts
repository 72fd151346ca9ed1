import { mkdirSync, renameSync, statSync } from 'node:fs'
import { basename, dirname, extname, join } from 'node:path'
import { connect, type Sqlite } from './connection.ts'

/** A checked copy of a collection. */
export interface Backup {
  readonly file: string
  readonly bytes: number
}

/**
 * Copies an open collection with SQLite's backup function and checks the copy by opening it.
 *
 * Never by copying the file: a copy taken in the middle of a write mixes old and new. The copy gets its final name only
 * after integrity, foreign keys and the row counts of every table were found right; throws otherwise.
 */
export async function backUp(sqlite: Sqlite, file: string, label: string, now: Date): Promise<Backup> {
  const folder = join(dirname(file), 'Backups')
  mkdirSync(folder, { recursive: true })
  const stamp = now.toISOString().replace(/[:.]/g, '-')
  const name = basename(file, extname(file))
  const target = join(folder, `${name} ${label} ${stamp}${extname(file)}`)
  const unfinished = `${target}.unfinished`
  await sqlite.backup(unfinished)
  verifyBackup(unfinished, rowCounts(sqlite))
  renameSync(unfinished, target)
  return { file: target, bytes: statSync(target).size }
}

function verifyBackup(file: string, expected: ReadonlyMap<string, number>): void {
  const copy = connect(file, 'read', true)
  try {
    assertSound(copy)
    for (const [table, rows] of rowCounts(copy)) {
      if (expected.get(table) !== rows)
        throw new Error(`The backup holds ${rows} rows of ${table}, not ${expected.get(table)}`)
    }
  } finally {
    copy.close()
  }
}

/** Throws unless SQLite finds the whole file sound and every reference kept. */
export function assertSound(sqlite: Sqlite): void {
  const integrity = sqlite.pragma('integrity_check', { simple: true })
  if (integrity !== 'ok') throw new Error(`The file is damaged: ${String(integrity)}`)
  const broken = sqlite.pragma('foreign_key_check') as unknown[]
  if (broken.length > 0) throw new Error(`${broken.length} references lead nowhere`)
}

/** How many rows each table holds. */
export function rowCounts(sqlite: Sqlite): ReadonlyMap<string, number> {
  const names = sqlite
    .prepare(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE 'accession_search%'",
    )
    .pluck()
    .all() as string[]
  return new Map(
    names.map((name) => [name, Number(sqlite.prepare(`SELECT count(*) FROM "${name}"`).pluck().get())]),
  )
}
