import type { Problem, ProblemCode } from '../../db/contract/problem.ts'
import { problem, Refusal } from '../../db/contract/refusal.ts'

type Said = readonly [code: ProblemCode, sentence: string, todo: string]

const BUSY: Said = [
  'collection-busy',
  'Another program is using this collection just now. Nothing was written.',
  'Close the other window or wait a moment, then try again.',
]
const HELD: Said = [
  'collection-busy',
  'Another program, such as a virus scanner, held a file that was to be written. What is in the book is safe.',
  'Wait a moment, then try again.',
]
const FULL: Said = [
  'disk-full',
  'The disk is full. Nothing was written, and what is in the book is safe.',
  'Make room on the disk, then try again.',
]
const READ_ONLY: Said = [
  'collection-read-only',
  'This collection may only be read where it is. Nothing was written.',
  'Move the file to a folder where you may write, or take the write protection off.',
]
const DAMAGED: Said = [
  'file-damaged',
  'The file of this collection is damaged. Nothing was written; the file was left as it is.',
  'Keep the file, and restore the last whole backup into a new one.',
]
const MISSING: Said = [
  'not-found',
  'The file of this collection is not there any more, or may not be opened.',
  'Check that its disk is connected and that you may read it, then try again.',
]
const GONE: Said = [
  'file-moved',
  'The file of this collection was moved or taken away while it was open. Nothing more was written.',
  'Save the book now: what is open holds all of it. Or put the file back, or connect its disk, and try again.',
]
const DISK_FAILS: Said = [
  'disk-fails',
  'The disk did not read or write as it should. What was asked for was not written.',
  'Check that the disk is connected and sound, start the app again, and check the book in the settings.',
]
const UNEXPECTED: Said = [
  'unexpected',
  'Something went wrong that was not expected. Nothing was written, and the book is as it was.',
  'Try again. If it happens again, the file common-drawer.log beside your collection says where.',
]

/** SQLite's result codes and the system's, by how they begin: extended codes are longer. */
const BY_CODE: readonly (readonly [begins: string, said: Said])[] = [
  ['SQLITE_BUSY', BUSY],
  ['SQLITE_LOCKED', BUSY],
  ['SQLITE_FULL', FULL],
  ['SQLITE_READONLY_DBMOVED', GONE],
  ['SQLITE_READONLY', READ_ONLY],
  ['SQLITE_CORRUPT', DAMAGED],
  ['SQLITE_NOTADB', DAMAGED],
  ['SQLITE_CANTOPEN', MISSING],
  ['SQLITE_IOERR', DISK_FAILS],
  ['EIO', DISK_FAILS],
  ['EBUSY', HELD],
  ['ENOSPC', FULL],
  ['EDQUOT', FULL],
  ['EACCES', READ_ONLY],
  ['EPERM', READ_ONLY],
  ['EROFS', READ_ONLY],
  ['ENOENT', MISSING],
]

/** The problem that a caller is answered with when something was thrown. */
export function problemOf(thrown: unknown): Problem {
  for (let cause = thrown; cause instanceof Error; cause = cause.cause) {
    if (cause instanceof Refusal) return cause.problem
    const code = codeOf(cause)
    const known = BY_CODE.find(([begins]) => code.startsWith(begins))
    if (known !== undefined) return asProblem(known[1])
  }
  return asProblem(UNEXPECTED)
}

/** Names what was thrown and where, for the log: no message, since a message may hold a name or an address. */
export function traceOf(thrown: unknown): string {
  if (!(thrown instanceof Error)) return typeof thrown
  const frames = (thrown.stack ?? '').split('\n').filter((line) => /^\s+at /.test(line))
  const kind = [thrown.name, codeOf(thrown)].filter((part) => part !== '').join(' ')
  const cause = thrown.cause === undefined ? '' : ` because of ${traceOf(thrown.cause)}`
  return `${kind} ${frames.slice(0, 8).join(' ').replace(/\s+/g, ' ').trim()}${cause}`
}

function codeOf(thrown: Error): string {
  return 'code' in thrown && typeof thrown.code === 'string' ? thrown.code : ''
}

function asProblem([code, sentence, todo]: Said): Problem {
  return problem(code, sentence, { todo })
}
