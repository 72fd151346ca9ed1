import { statSync, writeFileSync } from 'node:fs'
import { homedir, tmpdir } from 'node:os'
import { basename, dirname, isAbsolute, join, relative, resolve } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import { eq } from 'drizzle-orm'
import type { BackupLine } from '../../contract/collection-operations.ts'
import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import type { Untold } from '../../contract/told.ts'
import { newestFirst } from '../../domain/backups/keep-rule.ts'
import { type Message, message } from '../../messages/message.ts'
import {
  type BackupFile,
  type BackupLabel,
  backupsIn,
  copyOut,
  openSound,
  ownBackupFolder,
  type SavedBackup,
  saveBackup,
  sheetBeside,
} from '../../migrations/backup-files.ts'
import { type BackupOrder, backUpInThread, backupUnderWay } from '../../migrations/backup-thread.ts'
import type { Sqlite } from '../../migrations/connection.ts'
import { makeWhole, removeFile } from '../../migrations/held-files.ts'
import { type OpenCollection, openCollection } from '../../migrations/open-file.ts'
import { insertRow } from '../../queries/rows.ts'
import { collection, entry } from '../../schema/collection-tables.ts'
import type { Reading, Writes, Writing } from '../book/context.ts'
import { sealEntry } from '../book/entry-chain.ts'
import { settingsOf } from '../book/settings.ts'
import { judgements } from '../regrow/judgements.ts'

const BYTES_IN_MB = 1_000_000
/** So many take some hundredths of a second to judge. */
const ACCESSIONS_AT_A_TIME = 500

const WHY: Readonly<Record<string, Message>> = {
  kept: message('backup.why-asked'),
  'at start': message('backup.why-by-itself'),
  'before import': message('backup.why-before-import'),
}

/** Makes a backup that was asked for, and deletes the older ones where that is asked too. */
export async function backUpCollection(
  reading: Reading,
  { deleteOlder }: ParsedInput<'backup.create'>,
): Promise<Result<'backup.create'>> {
  const kept = reading.collection.isInPlace()
    ? await backUpInThread(orderOf(reading, 'kept', false))
    : await saveOpenBook(reading)
  if (kept === null) throw new Error('A backup that was asked for was not made')
  const { file, bytes, second, secondTrouble } = kept
  const older = deleteOlder ? backupsBeside(reading, [file, second]) : []
  for (const backup of older) for (const old of [backup.file, sheetBeside(backup.file)]) removeFile(old)
  await laySheetBeside(reading, kept)
  return { file, bytes, second, secondTrouble, deleted: older.length }
}

/**
 * Lays the sheet for a fire beside a backup, and beside its copy in the second folder, so that it is not lost with the house.
 *
 * Where it cannot be made or written, as while no lot has a place or the disk is full, the backup is a good one all the same.
 */
async function laySheetBeside(reading: Reading, { file, second }: SavedBackup): Promise<void> {
  try {
    const { renderFireSheet } = await import('../print/fire-sheet.ts')
    // In between, whoever waits for an answer gets it.
    while (judgements.ahead(reading, ACCESSIONS_AT_A_TIME) > 0) await setImmediate()
    const bytes = Buffer.from((await renderFireSheet(reading)).pdf, 'base64')
    for (const backup of [file, second])
      if (backup !== null)
        await makeWhole(sheetBeside(backup), (unfinished) => writeFileSync(unfinished, bytes), 0)
  } catch {
    // Told by its absence: nothing that anybody asked for has failed.
  }
}

/** Saves the book from the connection that is open, where its file was moved or deleted: nothing else holds it any more. */
function saveOpenBook(reading: Reading): Promise<SavedBackup> {
  const { sqlite, collection, now } = reading
  const { keeping } = orderOf(reading, 'kept', false)
  const places = [dirname(collection.file), keeping.secondFolder, homedir()]
  const place = places.find((folder) => folder !== '' && isFolder(folder)) ?? tmpdir()
  return saveBackup(sqlite, join(place, basename(collection.file)), 'kept', now, keeping, () => {})
}

/** Every backup of the collection in both folders, but some. */
function backupsBeside(reading: Reading, but: readonly (string | null)[]): BackupFile[] {
  const { file } = reading.collection
  const { backupFolder } = settingsOf(reading)
  return [ownBackupFolder(file), ...(backupFolder === '' ? [] : [backupFolder])]
    .flatMap((folder) => backupsIn(folder, file))
    .filter((backup) => !but.includes(backup.file))
}

/** The newest backup of each collection that this program made or found whole, as it lay there, and its latest entry. */
const known = new Map<string, { readonly as: string; readonly entry: number }>()

/**
 * Backs up by itself where something was written since the newest backup. The demonstration can be made anew.
 *
 * Null: none was needed.
 */
export async function backUpIfWritten(reading: Reading, label: BackupLabel): Promise<SavedBackup | null> {
  if (settingsOf(reading).kind === 'demo') return null
  const { file } = reading.collection
  const entry = latestEntry(reading.sqlite)
  if (entry <= 1) return null
  const newest = newestAsItLies(file)
  const before = known.get(file)
  if (before !== undefined && before.as === newest && before.entry === entry) return null
  const kept = await backUpInThread(orderOf(reading, label, true))
  if (kept !== null) await laySheetBeside(reading, kept)
  known.set(file, { as: newestAsItLies(file), entry })
  return kept
}

/** The name of the newest backup, its size and when it was last changed: another one, or one that was spoilt, differs. */
function newestAsItLies(file: string): string {
  const [newest] = backupsIn(ownBackupFolder(file), file)
  if (newest === undefined) return ''
  const changed = statSync(newest.file, { throwIfNoEntry: false })?.mtimeMs
  return `${newest.file} ${newest.bytes} ${changed}`
}

function orderOf(reading: Reading, label: BackupLabel, onlyIfWritten: boolean): BackupOrder {
  const { backupFolder, backupLimitMb } = settingsOf(reading)
  const keeping = { secondFolder: backupFolder, limitBytes: backupLimitMb * BYTES_IN_MB }
  return { file: reading.collection.file, label, at: reading.now.toISOString(), keeping, onlyIfWritten }
}

const latestEntry = (sqlite: Sqlite) => Number(sqlite.prepare('SELECT max(id) FROM entry').pluck().get())

function isWhole(file: string): boolean {
  try {
    openSound(file).close()
    return true
  } catch {
    // A backup that does not open is none.
    return false
  }
}

/** The backups of a collection; where it is not open, also which of them is the newest that is whole. */
export function listBackups(
  file: string,
  open: Reading | null,
  trouble: Message | string | null,
): Result<'backup.list'> {
  const settings = open === null ? null : settingsOf(open)
  const secondFolder = settings?.backupFolder ?? ''
  const folder = ownBackupFolder(file)
  const lines = [
    ...backupsIn(folder, file).map((backup) => ({ backup, where: 'own-folder' as const })),
    ...(secondFolder === '' ? [] : backupsIn(secondFolder, file)).map((backup) => ({
      backup,
      where: 'second-folder' as const,
    })),
  ]
    .sort((a, b) => newestFirst(a.backup, b.backup))
    .map(lineOf)
  return {
    folder,
    secondFolder,
    secondThere: secondFolder !== '' && isFolder(secondFolder),
    limitMb: settings?.backupLimitMb ?? null,
    backups: lines,
    lastGood: open === null ? (lines.find((line) => isWhole(line.file))?.file ?? null) : null,
    trouble,
    underWay: backupUnderWay(file),
  }
}

function lineOf({ backup, where }: { backup: BackupFile; where: BackupLine['where'] }): Untold<BackupLine> {
  const { file, label, at, bytes } = backup
  return { file, where, why: WHY[label] ?? message('backup.why-before-version'), at, bytes }
}

function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false
}

/** Changes the second folder and the limit, megabytes. Refuses a folder that is missing or where backups lie already. */
export const changeBackupRule: Writes<'backup.change-rule'> = (writing, input) => {
  const { secondFolder, limitMb } = input
  if (secondFolder !== undefined && secondFolder !== '') refuseUnfitFolder(writing, secondFolder)
  const changes = {
    ...(secondFolder === undefined ? {} : { backupFolder: secondFolder === '' ? '' : resolve(secondFolder) }),
    ...(limitMb === undefined ? {} : { backupLimitMb: limitMb }),
  }
  if (Object.keys(changes).length === 0) refuse('nothing-to-change', message('collection.nothing-to-change'))
  writing.db.update(collection).set(changes).where(eq(collection.id, 1)).run()
  return { said: message('backup.rule-changed'), undoable: false }
}

function refuseUnfitFolder(writing: Writing, folder: string): void {
  const field = 'secondFolder'
  if (!isAbsolute(folder)) {
    refuse('folder-unfit', message('backup.whole-path'), { field })
  }
  if (!isFolder(folder)) {
    refuse('not-found', message('backup.no-folder', { folder }), {
      field,
      todo: message('backup.no-folder-todo'),
    })
  }
  const own = dirname(writing.collection.file)
  const from = relative(own, resolve(folder))
  if (from === '' || from === 'Backups') {
    refuse('folder-unfit', message('backup.same-folder'), {
      field,
      todo: message('backup.same-folder-todo'),
    })
  }
}

/**
 * Restores a backup into a new file, notes it there as an entry, and opens it for writing. Touches no other file.
 *
 * Throws a Refusal where the backup is not whole, or the new file is there already.
 */
export async function restoreBackup(
  input: ParsedInput<'backup.restore'>,
  target: string,
  now: () => Date,
): Promise<{ readonly collection: OpenCollection; readonly value: Result<'backup.restore'> }> {
  await copyOut(resolve(input.file), target)
  const restored = await openCollection(target, { access: 'write', now })
  const at = String(
    restored.sqlite.prepare('SELECT recorded_at FROM entry ORDER BY id DESC LIMIT 1').pluck().get(),
  )
  const said = message('backup.restored', { written: { day: at.slice(0, 10) } })
  const id = insertRow(restored.sqlite, entry, {
    key: input.key,
    operation: 'backup.restore',
    inputDigest: '',
    answer: '{}',
    said: JSON.stringify(said),
    recordedAt: now().toISOString(),
  })
  sealEntry(restored.sqlite, id)
  return { collection: restored, value: { entryId: id, said, undoable: false, file: target } }
}
