import { existsSync, mkdirSync, realpathSync, statSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import type { UntoldProblem } from '../contract/problem.ts'
import { refuse } from '../contract/refusal.ts'
import { message } from '../messages/message.ts'
import { backupsIn, ownBackupFolder } from './backup-files.ts'
import { connect, type Sqlite } from './connection.ts'
import { APPLICATION_ID, MIGRATIONS_FOLDER, newestVersion, refuseTheFuture } from './file-format.ts'
import { type FirstFacts, writeFirstRows } from './first-rows.ts'
import { makeWhole } from './held-files.ts'
import { type CollectionLock, lockCollection } from './lock.ts'
import { migrateFile } from './migrate-file.ts'
import { type Drizzle, overDrizzle } from './over-drizzle.ts'

/** A collection that is open: one file, one connection. */
export interface OpenCollection {
  readonly file: string
  readonly access: 'write' | 'read'
  /** Why it is open for reading alone, though it was to be written: a place that is write-protected, or a full disk. */
  readonly whyReadOnly?: UntoldProblem
  readonly sqlite: Sqlite
  readonly db: Drizzle
  readonly openedAt: Date
  /** Whether the file that is open still lies under its name. */
  isInPlace(): boolean
  /** Whether only this connection has written in the file since it was opened. */
  isOursAlone(): boolean
  close(): void
}

export interface OpenOptions {
  readonly access: 'write' | 'read'
  readonly now: () => Date
  /** Another folder of migrations, for tests of migrating. */
  readonly migrationsFolder?: string
  /** How long a writer waits for another process to let go of the collection, milliseconds. */
  readonly lockWaitMs?: number
}

const LOCK_WAIT_MS = 4_000

/**
 * Opens a collection.
 *
 * For writing it takes the collection's lock, refuses files that are not collections or come from the future, backs up
 * and migrates older ones. For reading it takes no lock and changes nothing. Throws a Refusal that says what to do.
 */
export async function openCollection(path: string, options: OpenOptions): Promise<OpenCollection> {
  const file = resolve(path)
  if (!existsSync(file)) {
    refuse('not-found', message('file.no-collection', { file }), {
      todo: message('file.no-collection-todo'),
    })
  }
  const folder = options.migrationsFolder ?? MIGRATIONS_FOLDER
  const lock = options.access === 'write' ? lockFor(file, options.lockWaitMs) : null
  try {
    return await openLocked(file, options, folder, lock)
  } catch (cause) {
    lock?.release()
    if (options.access === 'write' || !isHalfWritten(cause)) throw cause
    undoHalfWrite(file)
    return openLocked(file, options, folder, null)
  }
}

/** The lock of the file itself, whatever link leads to it. Refuses a file with two names, of which each would have its own. */
function lockFor(file: string, waitMs = LOCK_WAIT_MS): CollectionLock {
  if (statSync(file).nlink > 1)
    refuse('not-a-collection', message('file.second-name', { file }), {
      todo: message('file.second-name-todo'),
    })
  return lockCollection(realpathSync(file), waitMs)
}

/** Whether a reader met what a process left that died in the middle of writing: only a writer may undo it. */
function isHalfWritten(cause: unknown): boolean {
  return cause instanceof Error && 'code' in cause && cause.code === 'SQLITE_READONLY_ROLLBACK'
}

/** Has SQLite undo a half-written transaction, as it does at the first look of a connection that may write. */
function undoHalfWrite(file: string): void {
  const lock = lockFor(file)
  try {
    const sqlite = connect(file, 'write', true)
    sqlite.pragma('user_version')
    sqlite.close()
  } finally {
    lock.release()
  }
}

async function openLocked(
  file: string,
  options: OpenOptions,
  folder: string,
  lock: CollectionLock | null,
): Promise<OpenCollection> {
  const sqlite = connectToCollection(file, options.access)
  try {
    if (options.access === 'write') {
      refuseDamage(sqlite, file)
      await migrateFile(sqlite, file, folder, options.now())
    } else {
      const version = Number(sqlite.pragma('user_version', { simple: true }))
      const newest = newestVersion(folder)
      refuseTheFuture(version, newest)
      if (version < newest) {
        refuse('collection-read-only', message('file.from-older-version'), {
          todo: message('file.from-older-version-todo'),
        })
      }
    }
    return assemble(file, options, sqlite, lock)
  } catch (cause) {
    sqlite.close()
    throw cause
  }
}

/**
 * Makes a new, empty collection with the crop table in it, and opens it for writing.
 *
 * It is made under another name first, so that a half-made collection never carries the real one. Refuses a file that
 * is there already.
 */
export async function createCollection(path: string, facts: FirstFacts): Promise<OpenCollection> {
  const file = resolve(path)
  if (existsSync(file)) {
    refuse('already-there', message('file.there-already', { file }), {
      todo: message('file.there-already-todo'),
    })
  }
  mkdirSync(dirname(file), { recursive: true })
  await makeWhole(file, async (unfinished) => {
    const sqlite = connect(unfinished, 'write', false)
    try {
      sqlite.pragma(`application_id = ${APPLICATION_ID}`)
      await migrateFile(sqlite, unfinished, MIGRATIONS_FOLDER, facts.now())
      writeFirstRows(sqlite, overDrizzle(sqlite), facts)
    } finally {
      sqlite.close()
    }
  })
  return openCollection(file, { access: 'write', now: facts.now })
}

function connectToCollection(file: string, access: 'write' | 'read'): Sqlite {
  let sqlite: Sqlite
  try {
    sqlite = connect(file, access, true)
  } catch (cause) {
    if (cause instanceof Error && 'code' in cause && cause.code === 'SQLITE_NOTADB') notACollection(file)
    throw cause
  }
  if (sqlite.pragma('application_id', { simple: true }) !== APPLICATION_ID) {
    sqlite.close()
    notACollection(file)
  }
  return sqlite
}

/** A larger file is not looked through before it opens: its first backup, soon after, does that. Bytes. */
const LOOKED_THROUGH_UP_TO = 64_000_000

/** Looks through a file before anything is written in it: damage that is noticed late is in every backup by then. */
function refuseDamage(sqlite: Sqlite, file: string): void {
  if (statSync(file).size > LOOKED_THROUGH_UP_TO) return
  if (sqlite.pragma('quick_check(1)', { simple: true }) === 'ok') return
  refuse('file-damaged', message('file.damaged'), {
    todo: message('problem.damaged-todo'),
  })
}

function notACollection(file: string): never {
  if (backupsIn(ownBackupFolder(file), file).length > 0)
    refuse('file-damaged', message('file.beginning-damaged', { file }), {
      todo: message('problem.damaged-todo'),
    })
  refuse('not-a-collection', message('file.not-a-collection', { file }), {
    todo: message('file.not-a-collection-todo'),
  })
}

function assemble(
  file: string,
  options: OpenOptions,
  sqlite: Sqlite,
  lock: CollectionLock | null,
): OpenCollection {
  const { ino, dev } = statSync(file)
  const dataVersion = () => sqlite.pragma('data_version', { simple: true })
  const asOpened = dataVersion()
  return {
    file,
    access: options.access,
    sqlite,
    db: overDrizzle(sqlite),
    openedAt: options.now(),
    isInPlace() {
      const there = statSync(file, { throwIfNoEntry: false })
      return there?.ino === ino && there.dev === dev
    },
    isOursAlone: () => dataVersion() === asOpened,
    close() {
      sqlite.close()
      lock?.release()
    },
  }
}
