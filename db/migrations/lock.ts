import { basename, dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { refuse } from '../contract/refusal.ts'
import { message } from '../messages/message.ts'
import type { Sqlite } from './connection.ts'

/** Held while one process may write a collection; the system drops it when that process ends, however it ends. */
export interface CollectionLock {
  release(): void
}

/**
 * Takes the writing lock of a collection, waiting `waitMs` for another holder.
 *
 * The lock is SQLite's own exclusive lock on an empty file beside the collection: it works alike on every system and
 * cannot be left behind by a crash. The empty file stays: removing it would let two waiters lock two different files.
 */
export function lockCollection(file: string, waitMs: number): CollectionLock {
  let sqlite: Sqlite | undefined
  try {
    sqlite = new Database(join(dirname(file), `.${basename(file)}.lock`), { timeout: waitMs })
    sqlite.exec('BEGIN EXCLUSIVE')
  } catch (cause) {
    sqlite?.close()
    if (cause instanceof Error && 'code' in cause && cause.code === 'SQLITE_CANTOPEN') {
      refuse('collection-read-only', message('file.read-only-folder', { folder: dirname(file) }), {
        todo: message('problem.read-only-todo'),
      })
    }
    if (cause instanceof Error && 'code' in cause && cause.code === 'SQLITE_BUSY') {
      refuse('collection-busy', message('file.open-elsewhere'), {
        todo: message('file.open-elsewhere-todo'),
      })
    }
    throw cause
  }
  const held = sqlite
  return {
    release() {
      if (!held.open) return
      held.exec('ROLLBACK')
      held.close()
    },
  }
}
