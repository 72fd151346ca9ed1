import { basename, dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { refuse } from '../contract/refusal.ts'
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
      refuse('collection-read-only', `Nothing may be written in ${dirname(file)}.`, {
        todo: 'Move the file to a folder where you may write, or take the write protection off.',
      })
    }
    if (cause instanceof Error && 'code' in cause && cause.code === 'SQLITE_BUSY') {
      refuse(
        'collection-busy',
        'This collection is open in another window or program, which may be writing in it.',
        {
          todo: 'Work in that window, or close it and try again. Nothing was changed.',
        },
      )
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
