import type { ProblemCode, UntoldProblem } from '../../db/contract/problem.ts'
import { Refusal } from '../../db/contract/refusal.ts'
import { message } from '../../db/messages/message.ts'

/** What can go wrong around a collection, each with what is told of it. */
const KNOWN = {
  busy: 'collection-busy',
  held: 'collection-busy',
  'disk-full': 'disk-full',
  'read-only': 'collection-read-only',
  damaged: 'file-damaged',
  missing: 'not-found',
  gone: 'file-moved',
  'disk-fails': 'disk-fails',
  unexpected: 'unexpected',
} as const satisfies Readonly<Record<string, ProblemCode>>

/** SQLite's result codes and the system's, by how they begin: extended codes are longer. */
const BY_CODE: readonly (readonly [begins: string, known: keyof typeof KNOWN])[] = [
  ['SQLITE_BUSY', 'busy'],
  ['SQLITE_LOCKED', 'busy'],
  ['SQLITE_FULL', 'disk-full'],
  ['SQLITE_READONLY_DBMOVED', 'gone'],
  ['SQLITE_READONLY', 'read-only'],
  ['SQLITE_CORRUPT', 'damaged'],
  ['SQLITE_NOTADB', 'damaged'],
  ['SQLITE_CANTOPEN', 'missing'],
  ['SQLITE_IOERR', 'disk-fails'],
  ['EIO', 'disk-fails'],
  ['EBUSY', 'held'],
  ['ENOSPC', 'disk-full'],
  ['EDQUOT', 'disk-full'],
  ['EACCES', 'read-only'],
  ['EPERM', 'read-only'],
  ['EROFS', 'read-only'],
  ['ENOENT', 'missing'],
]

/** The problem that a caller is answered with when something was thrown. */
export function problemOf(thrown: unknown): UntoldProblem {
  for (let cause = thrown; cause instanceof Error; cause = cause.cause) {
    if (cause instanceof Refusal) return cause.problem
    const code = codeOf(cause)
    const known = BY_CODE.find(([begins]) => code.startsWith(begins))
    if (known !== undefined) return asProblem(known[1])
  }
  return asProblem('unexpected')
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

function asProblem(known: keyof typeof KNOWN): UntoldProblem {
  return {
    code: KNOWN[known],
    sentence: message(`problem.${known}`),
    field: null,
    todo: message(`problem.${known}-todo`),
    choices: [],
  }
}
