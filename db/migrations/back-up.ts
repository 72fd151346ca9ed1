import { mkdirSync, readdirSync, statSync } from 'node:fs'
import { basename, dirname, extname, join } from 'node:path'
import { refuse } from '../contract/refusal.ts'
import { message } from '../messages/message.ts'
import { connect, type Sqlite } from './connection.ts'
import { withinBytes } from './file-place.ts'
import { makeWhole, removeIfFree } from './held-files.ts'

/** A checked copy of a collection. */
export interface Backup {
  readonly file: string
  readonly bytes: number
}

/** How far a backup is. */
export interface BackupProgress {
  readonly doing: 'copying' | 'checking'
  /** How much of the file is copied, 0 to 1. */
  readonly copied: number
}

/** Hears how far a backup is, often; what it throws stops the copying. */
export type OnBackup = (progress: BackupProgress) => void

/** Pages that are copied between two looks at who else waits for the file. */
const PAGES_AT_A_TIME = 500
/** So often a copy begins again because the file was written meanwhile; then it is taken in one go. */
const MOST_BEGINNINGS = 5
/** Longer than this no backup takes: what is left unfinished from before was given up. Milliseconds. */
const GIVEN_UP_AFTER_MS = 3_600_000
/** Leaves room in 255 bytes for the longest label, the time, '.drawer.unfinished-journal'. */
const LONGEST_STEM_BYTES = 180
/** Tables in which rows are only ever added. */
const ONLY_GROWING = ['entry', 'movement', 'lot', 'accession'] as const

/**
 * Copies an open collection with SQLite's backup function and checks the copy by opening it.
 *
 * Never by copying the file: a copy taken in the middle of a write mixes old and new. The copy gets its final name only
 * after integrity, foreign keys and the row counts of every table were found right; throws otherwise, and leaves nothing.
 * Where another connection writes while the file is copied, SQLite begins again by itself.
 */
export async function backUp(
  sqlite: Sqlite,
  file: string,
  label: string,
  now: Date,
  onProgress: OnBackup = () => {},
): Promise<Backup> {
  const folder = join(dirname(file), 'Backups')
  if (statSync(folder, { throwIfNoEntry: false })?.isFile())
    refuse('already-there', message('file.in-place-of-backups', { folder }), {
      todo: message('file.in-place-of-backups-todo'),
    })
  mkdirSync(folder, { recursive: true })
  const stamp = now.toISOString().replace(/[:.]/g, '-')
  const name = backupStem(file)
  const target = join(folder, `${name} ${label} ${stamp}${extname(file)}`)
  dropGivenUp(folder, name)
  await makeWhole(target, async (unfinished) => {
    const before = rowCounts(sqlite)
    const version = dataVersion(sqlite)
    await copyTo(sqlite, unfinished, onProgress)
    onProgress({ doing: 'checking', copied: 1 })
    verifyBackup(unfinished, before, dataVersion(sqlite) === version)
    onProgress({ doing: 'checking', copied: 1 })
  })
  return { file: target, bytes: statSync(target).size }
}

/** What the names of a file's backups begin with: its own name, cut so that label, time and ending fit behind it. */
export function backupStem(file: string): string {
  return withinBytes(basename(file, extname(file)), LONGEST_STEM_BYTES)
}

/** Changes when another connection has written. */
function dataVersion(sqlite: Sqlite): unknown {
  return sqlite.pragma('data_version', { simple: true })
}

async function copyTo(sqlite: Sqlite, target: string, onProgress: OnBackup): Promise<void> {
  let beginnings = 1
  let left = Number.POSITIVE_INFINITY
  await sqlite.backup(target, {
    progress({ totalPages, remainingPages }) {
      if (remainingPages > left) beginnings += 1
      left = remainingPages
      onProgress({ doing: 'copying', copied: 1 - remainingPages / totalPages })
      return beginnings < MOST_BEGINNINGS ? PAGES_AT_A_TIME : totalPages
    },
  })
}

/** Takes away what a program left that was ended in the middle of a backup. */
function dropGivenUp(folder: string, name: string): void {
  for (const left of readdirSync(folder)) {
    if (!left.startsWith(`${name} `) || !/\.unfinished(-journal)?$/.test(left)) continue
    const path = join(folder, left)
    const changed = statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Date.now()
    if (Date.now() - changed > GIVEN_UP_AFTER_MS) removeIfFree(path)
  }
}

/** Where the file was written while it was copied, the copy holds at least what was there before. */
function verifyBackup(file: string, before: ReadonlyMap<string, number>, unchanged: boolean): void {
  const copy = connect(file, 'read', true)
  try {
    assertSound(copy)
    const counts = rowCounts(copy)
    for (const table of unchanged ? before.keys() : ONLY_GROWING) {
      const [rows, expected] = [counts.get(table) ?? 0, before.get(table) ?? 0]
      if (unchanged ? rows !== expected : rows < expected)
        throw new Error(`The backup holds ${rows} rows of ${table}, not ${expected}`)
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
