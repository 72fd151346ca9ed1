import type {
  OperationName,
  ParsedInput,
  ReadName,
  Result,
  WriteName,
  WriteResult,
} from '../../contract/contract.ts'
import { type IsoDate, isoDate } from '../../domain/dates/iso-date.ts'
import type { Message } from '../../messages/message.ts'
import type { Sqlite } from '../../migrations/connection.ts'
import type { OpenCollection } from '../../migrations/open-file.ts'
import type { Drizzle } from '../../migrations/over-drizzle.ts'

/** What a service that reads is given. */
export interface Reading {
  readonly collection: OpenCollection
  readonly sqlite: Sqlite
  readonly db: Drizzle
  readonly now: Date
  readonly today: IsoDate
}

/** What a service that writes is given: as for reading, inside a transaction, with the entry it writes under. */
export interface Writing extends Reading {
  readonly entryId: number
  /** What the keeper was asked about and said to be so. */
  readonly itIsSo: readonly string[]
  /** Tells in the library's language what the book keeps as a text, such as what a list says in the story of a gift. */
  readonly say: (told: Message) => string
}

/** What answers an operation that reads. */
export type Reads<N extends OperationName> = (reading: Reading, input: ParsedInput<N>) => Result<N>

/** What does an operation that writes, within its transaction; its entry is added to the answer at the door. */
export type Writes<N extends WriteName> = (writing: Writing, input: ParsedInput<N>) => WriteResult<N>

/** What answers an operation: a read may take its time. */
type Handler<N extends OperationName> = N extends WriteName
  ? Writes<N>
  : N extends ReadName
    ? (...given: Parameters<Reads<N>>) => Result<N> | Promise<Result<N>>
    : Reads<N>

/** Handlers of some operations, by name. */
export type Handlers<N extends OperationName = OperationName> = { readonly [K in N]: Handler<K> }

/** The reading side of a collection at one moment. `today` is the date where the keeper is. */
export function readingOf(collection: OpenCollection, now: Date): Reading {
  const two = (value: number) => String(value).padStart(2, '0')
  const today = isoDate(`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`)
  return { collection, sqlite: collection.sqlite, db: collection.db, now, today }
}
