import { extname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { UntoldProblem } from '../contract/problem.ts'
import { Refusal } from '../contract/refusal.ts'
import type { BackupProgress } from './back-up.ts'
import type { BackupLabel, BackupRule, SavedBackup } from './backup-files.ts'

/** A backup to be made of the collection in a file. */
export interface BackupOrder {
  readonly file: string
  readonly label: BackupLabel
  /** When, ISO 8601: it stands in the name. */
  readonly at: string
  readonly keeping: BackupRule
  /** Only where something was written since the newest backup that is whole. */
  readonly onlyIfWritten: boolean
}

export type FromBackup =
  | { readonly kind: 'progress'; readonly progress: BackupProgress }
  | { readonly kind: 'done'; readonly kept: SavedBackup | null }
  | {
      readonly kind: 'failed'
      readonly problem: UntoldProblem | null
      readonly message: string
      readonly code: string | null
    }

/** The same ending as this file has: the thread's file lies beside it, in the sources and in the built app alike. */
const WORKER_FILE = new URL(`./backup-worker${extname(fileURLToPath(import.meta.url))}`, import.meta.url)

interface UnderWay {
  readonly worker: Worker
  readonly ended: Promise<void>
  progress: BackupProgress
}

/** The backups under way, by the file of their collection: one after the other. */
const underWay = new Map<string, UnderWay>()

/** How far the backup of a collection is; null: none is being made. */
export function backupUnderWay(file: string): BackupProgress | null {
  return underWay.get(file)?.progress ?? null
}

/** Stops the backups under way, and waits until their threads have let go of every file. */
export async function stopBackups(): Promise<void> {
  for (const { worker } of underWay.values()) worker.postMessage('stop')
  await Promise.all([...underWay.values()].map(({ ended }) => ended))
}

/**
 * Makes a backup in a thread of its own, after the one of the same file that is under way. Null: none was needed.
 *
 * Rejects, leaving nothing that looks like a backup, where it could not be made or was stopped.
 */
export async function backUpInThread(order: BackupOrder): Promise<SavedBackup | null> {
  for (let before = underWay.get(order.file); before !== undefined; before = underWay.get(order.file)) {
    await before.ended
  }
  const worker = new Worker(WORKER_FILE, { workerData: order, execArgv: [] })
  const ended = new Promise<void>((resolve) => worker.once('exit', () => resolve()))
  const job: UnderWay = { worker, ended, progress: { doing: 'copying', copied: 0 } }
  underWay.set(order.file, job)
  try {
    return await new Promise((answer, fail) => {
      worker.on('message', (message: FromBackup) => {
        if (message.kind === 'progress') job.progress = message.progress
        else if (message.kind === 'done') answer(message.kept)
        else fail(failureOf(message))
      })
      worker.once('error', fail)
      worker.once('exit', (code) =>
        fail(new Error(`The backup's thread ended with ${code} before it was done`)),
      )
    })
  } finally {
    await ended
    underWay.delete(order.file)
  }
}

function failureOf({ problem, message, code }: Extract<FromBackup, { kind: 'failed' }>): Error {
  if (problem !== null) return new Refusal(problem)
  const failure = new Error(message)
  return code === null ? failure : Object.assign(failure, { code })
}
