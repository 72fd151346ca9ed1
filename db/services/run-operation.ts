import { createHash } from 'node:crypto'
import {
  contract,
  type OperationName,
  type ParsedInput,
  type Result,
  type WriteName,
} from '../contract/contract.ts'
import type { Receipt } from '../contract/operation.ts'
import { Refusal, refuse } from '../contract/refusal.ts'
import type { Untold } from '../contract/told.ts'
import { isMessage, type Message, message } from '../messages/message.ts'
import { textsOf } from '../messages/texts-of.ts'
import type { OpenCollection } from '../migrations/open-file.ts'
import { prepared } from '../queries/prepared.ts'
import { insertRow, rowWith } from '../queries/rows.ts'
import { entry } from '../schema/collection-tables.ts'
import { askAboutClock } from './book/asked-clock.ts'
import { type Reading, readingOf, type Writing } from './book/context.ts'
import { sealEntry } from './book/entry-chain.ts'
import { refuseImpossibleDays } from './book/possible-days.ts'
import { settingsOf } from './book/settings.ts'
import { backUpIfWritten } from './collection/backups.ts'
import { updateForecasts } from './forecast/save-forecasts.ts'
import { handlerOf, type ServiceName } from './handlers.ts'
import { withNames } from './people/named.ts'

export type { ServiceName }

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
): Promise<Result<N>> {
  const reading = readingOf(collection, now())
  try {
    return withNames(reading, await run(reading, name, input))
  } catch (cause) {
    throw cause instanceof Refusal ? new Refusal(withNames(reading, cause.problem)) : cause
  }
}

async function run<N extends ServiceName>(
  reading: Reading,
  name: N,
  input: ParsedInput<N>,
): Promise<Result<N>> {
  const { collection } = reading
  const handler = await handlerOf(name)
  if (collection.access === 'write' && !collection.isOursAlone()) {
    refuse('file-damaged', message('file.written-over'), {
      todo: message('file.written-over-todo'),
    })
  }
  const { access } = contract[name]
  if (access === 'reads') return handler(reading, input)
  if (collection.access === 'read') {
    refuse('collection-read-only', message('file.only-read'), {
      ...(collection.whyReadOnly === undefined ? {} : { todo: message('file.only-read-todo') }),
    })
  }
  if (BACKED_UP_FIRST.has(name)) await backUpIfWritten(reading, 'before import')
  if (access === 'keeps') return handler(reading, input)
  const { say } = await textsOf(settingsOf(reading))
  const answer = write(reading, name, input as ParsedInput<WriteName>, say, (writing) =>
    handler(writing, input),
  )
  if (FORGETS.has(name)) reading.sqlite.exec('VACUUM')
  return answer as Result<N>
}

/** Writes after which nothing of what was there may lie in the unused parts of the file. */
const FORGETS: ReadonlySet<OperationName> = new Set(['person.erase'])

/** Writes of many rows at once, from a file of another program: the collection is backed up before them. */
export const BACKED_UP_FIRST: ReadonlySet<OperationName> = new Set(['reading.import-file', 'import.record'])

function write(
  reading: Reading,
  name: ServiceName,
  input: ParsedInput<WriteName>,
  say: (told: Message) => string,
  act: (writing: Writing) => unknown,
): Untold<Receipt> {
  const { key, itIsSo = [], by = {}, ...facts } = input
  const digest = createHash('sha256')
    .update(JSON.stringify([name, facts]))
    .digest('hex')
  const once = reading.sqlite.transaction(() => {
    const before = rowWith(reading.sqlite, entry, { key })
    if (before) return answerAgain(before, digest)
    const id = insertRow(reading.sqlite, entry, {
      key,
      operation: name,
      inputDigest: digest,
      answer: '',
      said: '',
      recordedAt: reading.now.toISOString(),
      personId: by.personId ?? null,
      station: by.station ?? '',
      eventId: by.eventId ?? null,
    })
    const writing = { ...reading, entryId: id, itIsSo, say }
    askAboutClock(writing)
    refuseImpossibleDays(writing, name, facts)
    const answer = { entryId: id, ...(act(writing) as Omit<Untold<Receipt>, 'entryId'>) }
    updateForecasts(writing)
    const said = isMessage(answer.said) ? JSON.stringify(answer.said) : answer.said
    prepared(reading.sqlite, 'UPDATE entry SET answer = ?, said = ? WHERE id = ?').run(
      JSON.stringify(answer),
      said,
      id,
    )
    sealEntry(reading.sqlite, id)
    return answer
  })
  return once.immediate()
}

function answerAgain(before: typeof entry.$inferSelect, digest: string): Untold<Receipt> {
  // Erasing somebody takes the digests of all that was asked before: what was answered stands.
  if (before.inputDigest !== '' && before.inputDigest !== digest) {
    refuse('key-used-otherwise', message('problem.key-used-for-else'), {
      field: 'key',
      todo: message('problem.key-used-for-else-todo'),
    })
  }
  return JSON.parse(before.answer)
}
