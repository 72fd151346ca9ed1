import { copyFileSync, existsSync, mkdirSync, readdirSync, statSync } from 'node:fs'
import { basename, dirname, extname, join } from 'node:path'
import { refuse } from '../contract/refusal.ts'
import { backupsToDrop, newestFirst } from '../domain/backups/keep-rule.ts'
import { type Message, message } from '../messages/message.ts'
import { assertSound, type Backup, backUp, backupStem, type OnBackup } from './back-up.ts'
import { connect, type Sqlite } from './connection.ts'
import { APPLICATION_ID, MIGRATIONS_FOLDER, newestVersion, refuseTheFuture } from './file-format.ts'
import { makeWhole, removeIfFree } from './held-files.ts'

/** Why a backup was made, as it stands in its name. */
export type BackupLabel = 'kept' | 'at start' | 'before import'

/** A backup that lies in a folder; whether it is whole shows only when it is opened. */
export interface BackupFile {
  readonly file: string
  readonly label: string
  /** When it was made, ISO 8601 in UTC. */
  readonly at: string
  /** The latest entry that it holds; 0 where that cannot be read. */
  readonly latestEntry: number
  readonly bytes: number
  readonly routine: boolean
}

/** Where backups go beside the collection's own folder, and how much they may take there. */
export interface BackupRule {
  /** Empty: nowhere else. */
  readonly secondFolder: string
  readonly limitBytes: number
}

const ROUTINE = new Set(['at start', 'before import'])
const NAMED =
  /^(kept|at start|before import|before version \d+) (\d{4}-\d\d-\d\d)T(\d\d)-(\d\d)-(\d\d)-(\d{3})Z$/

/** The folder of a collection's own backups. */
export function ownBackupFolder(file: string): string {
  return join(dirname(file), 'Backups')
}

/** The backups of one collection in a folder, those that hold most first; none where the folder cannot be read. */
export function backupsIn(folder: string, file: string): BackupFile[] {
  const ending = extname(file)
  const beginning = `${backupStem(file)} `
  let names: string[]
  try {
    names = readdirSync(folder)
  } catch {
    // Not there yet, or its disk is not connected: either way nothing lies in it just now.
    return []
  }
  const found = names.flatMap((name): BackupFile[] => {
    if (!name.startsWith(beginning) || !name.endsWith(ending)) return []
    const [, label, day, ...time] = NAMED.exec(name.slice(beginning.length, -ending.length)) ?? []
    if (label === undefined) return []
    const at = `${day}T${time.slice(0, 3).join(':')}.${time[3]}Z`
    const path = join(folder, name)
    const bytes = statSync(path, { throwIfNoEntry: false })?.size ?? 0
    return [{ file: path, label, at, latestEntry: latestEntryIn(path), bytes, routine: ROUTINE.has(label) }]
  })
  return found.sort(newestFirst)
}

function latestEntryIn(file: string): number {
  try {
    const sqlite = connect(file, 'read', true)
    try {
      return Number(sqlite.prepare('SELECT max(id) FROM entry').pluck().get())
    } finally {
      sqlite.close()
    }
  } catch {
    // Damaged or gone: nothing that could be restored.
    return 0
  }
}

/** What came of a backup: the copy, and the copy of it in the second folder or why there is none. */
export interface SavedBackup extends Backup {
  readonly second: string | null
  readonly secondTrouble: Message | null
}

/** Makes a checked backup, copies it to the second folder, checks it there, and lets old ones go by the rule. */
export async function saveBackup(
  sqlite: Sqlite,
  file: string,
  label: BackupLabel,
  now: Date,
  keeping: BackupRule,
  onProgress: OnBackup,
): Promise<SavedBackup> {
  const backup = await backUp(sqlite, file, label, now, onProgress)
  dropByRule(ownBackupFolder(file), file, keeping)
  if (keeping.secondFolder === '') return { ...backup, second: null, secondTrouble: null }
  try {
    const second = await copyTo(keeping.secondFolder, backup.file)
    dropByRule(keeping.secondFolder, file, keeping)
    return { ...backup, second, secondTrouble: null }
  } catch {
    const secondTrouble = existsSync(keeping.secondFolder)
      ? message('file.not-copied', { folder: keeping.secondFolder })
      : message('file.second-away', { folder: keeping.secondFolder })
    return { ...backup, second: null, secondTrouble }
  }
}

/** A backup is closed and belongs to nobody, so that it may be copied as a file. */
async function copyTo(folder: string, backup: string): Promise<string> {
  if (!existsSync(folder)) throw new Error('The second folder is not there')
  const target = join(folder, basename(backup))
  await makeWhole(target, (unfinished) => {
    copyFileSync(backup, unfinished)
    openSound(unfinished).close()
  })
  return target
}

function dropByRule(folder: string, file: string, { limitBytes }: BackupRule): void {
  for (const backup of backupsToDrop(backupsIn(folder, file), limitBytes))
    for (const old of [backup.file, sheetBeside(backup.file)]) removeIfFree(old)
}

/** The sheet for a fire that lies beside a backup and goes with it. */
export function sheetBeside(backup: string): string {
  return `${backup.slice(0, -extname(backup).length)}.pdf`
}

/** Opens a copy of a collection for reading, after all of it was checked. Throws a Refusal where it is not whole. */
export function openSound(file: string): Sqlite {
  if (!existsSync(file)) {
    refuse('not-found', message('file.none', { file }), {
      field: 'file',
      todo: message('file.none-todo'),
    })
  }
  let sqlite: Sqlite | undefined
  try {
    sqlite = connect(file, 'read', true)
    if (sqlite.pragma('application_id', { simple: true }) !== APPLICATION_ID)
      throw new Error('Not a collection')
    assertSound(sqlite)
  } catch {
    sqlite?.close()
    refuse('file-damaged', message('file.damaged-or-none', { file: basename(file) }), {
      field: 'file',
      todo: message('file.damaged-or-none-todo'),
    })
  }
  try {
    refuseTheFuture(Number(sqlite.pragma('user_version', { simple: true })), newestVersion(MIGRATIONS_FOLDER))
    return sqlite
  } catch (thrown) {
    sqlite.close()
    throw thrown
  }
}

/** Copies a checked backup to a new file under another name first. Refuses where that file is there already. */
export async function copyOut(backup: string, target: string): Promise<void> {
  if (existsSync(target)) {
    refuse('already-there', message('file.there-already', { file: target }))
  }
  mkdirSync(dirname(target), { recursive: true })
  await makeWhole(target, async (unfinished) => {
    const sqlite = openSound(backup)
    try {
      await sqlite.backup(unfinished)
    } finally {
      sqlite.close()
    }
    openSound(unfinished).close()
  })
}
