import { createHash } from 'node:crypto'
import { eq } from 'drizzle-orm'
import type {
  OperationName,
  ParsedInput,
  ReadName,
  SaveName,
  Value,
  WriteName,
} from '../contract/contract.ts'
import { contract } from '../contract/contract.ts'
import type { Receipt } from '../contract/operation.ts'
import { refuse } from '../contract/refusal.ts'
import type { OpenCollection } from '../migrations/open-file.ts'
import { entry } from '../schema/collection-tables.ts'
import { askAboutClock } from './book/asked-clock.ts'
import { type Reading, readingOf, type Writing } from './book/context.ts'
import { refuseImpossibleDays } from './book/possible-days.ts'
import { backUpIfWritten } from './collection/backups.ts'
import { updateForecasts } from './forecast/save-forecasts.ts'
import { type HostName, readHandlers, saveHandlers, writeHandlers } from './handlers.ts'

/** The operations that a service answers; the rest change which collection is open, which is the host's to do. */
export type ServiceName = Exclude<OperationName, HostName>

/**
 * Runs one operation whose input has been checked.
 *
 * A write is one transaction: the entry, all its rows, and the kept answer to its key. Throws a Refusal, having
 * written nothing, when the operation cannot be done.
 */
export async function runOperation<N extends ServiceName>(
  collection: OpenCollection,
  name: N,
  input: ParsedInput<N>,
  now: () => Date,
): Promise<Value<N>> {
  const reading = readingOf(collection, now())
  if (collection.access === 'write' && !collection.isOursAlone()) {
    refuse('file-damaged', 'Another program wrote over the file of this collection while it was open.', {
      todo: 'Write nothing more. Close this window, keep the file, and restore the last whole backup.',
    })
  }
  if (isRead(name)) return (await runRead(reading, name, input as ParsedInput<typeof name>)) as Value<N>
  if (collection.access === 'read') {
    refuse('collection-read-only', 'This collection is open for reading only. Nothing was written.', {
      ...(collection.whyReadOnly === undefined
        ? {}
        : { todo: 'Do what the line at the top of the window says, and start the app again.' }),
    })
  }
  if (BACKED_UP_FIRST.has(name)) await backUpIfWritten(reading, 'before import')
  if (isSave(name)) return runSave(reading, name, input as ParsedInput<typeof name>) as Value<N>
  const answer = runWrite(reading, name as ServiceName & WriteName, input as ParsedInput<WriteName>)
  if (FORGETS.has(name)) reading.sqlite.exec('VACUUM')
  return answer as Value<N>
}

/** Writes after which nothing of what was there may lie in the unused parts of the file. */
const FORGETS: ReadonlySet<OperationName> = new Set(['person.erase'])

/** Writes of many rows at once, from a file of another program: the collection is backed up before them. */
export const BACKED_UP_FIRST: ReadonlySet<OperationName> = new Set(['reading.import-file', 'import.record'])

function isRead(name: OperationName): name is ReadName & ServiceName {
  return contract[name].access === 'reads'
}

function isSave(name: OperationName): name is SaveName {
  return contract[name].access === 'keeps'
}

function runRead<N extends ReadName & ServiceName>(
  reading: Reading,
  name: N,
  input: ParsedInput<N>,
): Value<N> | Promise<Value<N>> {
  const handler = readHandlers[name] as (
    reading: Reading,
    input: ParsedInput<N>,
  ) => Value<N> | Promise<Value<N>>
  return handler(reading, input)
}

function runSave<N extends SaveName>(reading: Reading, name: N, input: ParsedInput<N>): Value<N> {
  const handler = saveHandlers[name] as (reading: Reading, input: ParsedInput<N>) => Value<N>
  return handler(reading, input)
}

function runWrite<N extends WriteName & ServiceName>(
  reading: Reading,
  name: N,
  input: ParsedInput<WriteName>,
) {
  const { key, itIsSo = [], ...facts } = input
  const digest = createHash('sha256')
    .update(JSON.stringify([name, facts]))
    .digest('hex')
  const handler = writeHandlers[name] as (
    writing: Writing,
    input: ParsedInput<WriteName>,
  ) => Omit<Receipt, 'entryId'>
  const once = reading.sqlite.transaction(() => {
    const before = reading.db.select().from(entry).where(eq(entry.key, key)).get()
    if (before) return answerAgain(before, digest)
    const { id } = reading.db
      .insert(entry)
      .values({
        key,
        operation: name,
        inputDigest: digest,
        answer: '',
        said: '',
        recordedAt: reading.now.toISOString(),
      })
      .returning({ id: entry.id })
      .get()
    const writing = { ...reading, entryId: id, itIsSo }
    askAboutClock(writing)
    refuseImpossibleDays(writing, name, facts)
    const answer = { entryId: id, ...handler(writing, input) }
    updateForecasts(writing)
    reading.db
      .update(entry)
      .set({ answer: JSON.stringify(answer), said: answer.said })
      .where(eq(entry.id, id))
      .run()
    return answer
  })
  return once.immediate()
}

function answerAgain(before: typeof entry.$inferSelect, digest: string): Receipt {
  if (before.inputDigest !== digest) {
    refuse('key-used-otherwise', 'That request key was used for something else. Nothing was written.', {
      field: 'key',
      todo: 'Send a new key with a new request.',
    })
  }
  return JSON.parse(before.answer)
}
