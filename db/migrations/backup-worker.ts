import { parentPort, workerData } from 'node:worker_threads'
import { Refusal } from '../contract/refusal.ts'
import type { BackupProgress } from './back-up.ts'
import { backupsIn, openSound, ownBackupFolder, type SavedBackup, saveBackup } from './backup-files.ts'
import type { BackupOrder, FromBackup } from './backup-thread.ts'
import { connect, type Sqlite } from './connection.ts'

// A thread of its own for one backup, with a connection of its own that only reads: nobody waits for the copying or
// for the checking, which on a large file takes many seconds.
const order = workerData as BackupOrder
let stopped = false
parentPort?.once('message', () => {
  stopped = true
})

function tell(message: FromBackup): void {
  parentPort?.postMessage(message)
}

function onProgress(progress: BackupProgress): void {
  if (stopped) throw new Error('The backup was stopped before it was finished')
  tell({ kind: 'progress', progress })
}

const latestEntry = (sqlite: Sqlite) => Number(sqlite.prepare('SELECT max(id) FROM entry').pluck().get())

/** The latest entry in a backup, or null: a backup that does not open is none. */
function entryOf(file: string): number | null {
  try {
    const copy = openSound(file)
    try {
      return latestEntry(copy)
    } finally {
      copy.close()
    }
  } catch {
    return null
  }
}

async function backUp(): Promise<SavedBackup | null> {
  const { file, label, at, keeping, onlyIfWritten } = order
  const sqlite = connect(file, 'read', true)
  try {
    const [newest] = onlyIfWritten ? backupsIn(ownBackupFolder(file), file) : []
    if (newest !== undefined && entryOf(newest.file) === latestEntry(sqlite)) return null
    return await saveBackup(sqlite, file, label, new Date(at), keeping, onProgress)
  } finally {
    sqlite.close()
  }
}

try {
  tell({ kind: 'done', kept: await backUp() })
} catch (thrown) {
  const { message, code } = thrown as Error & { code?: unknown }
  tell({
    kind: 'failed',
    problem: thrown instanceof Refusal ? thrown.problem : null,
    message,
    code: typeof code === 'string' ? code : null,
  })
}
parentPort?.close()
