import type { ParsedInput, Result } from '../../db/contract/contract.ts'
import type { UntoldProblem } from '../../db/contract/problem.ts'
import type { LibrarySpeech } from '../../db/messages/texts-of.ts'
import type { OpenCollection } from '../../db/migrations/open-file.ts'
import type { ServiceName } from '../../db/services/run-operation.ts'

/** A collection just begun or restored, open for writing, and what its first entry says. */
export interface Begun<N extends 'collection.create' | 'backup.restore'> {
  readonly collection: OpenCollection
  readonly value: Result<N>
}

/** What the host does with collections: the services, the clock and the random source behind one small wall. */
export interface CollectionBackend {
  open(file: string, access: 'read' | 'write'): Promise<OpenCollection>
  begin(file: string, input: ParsedInput<'collection.create'>): Promise<Begun<'collection.create'>>
  makeDemo(file: string): Promise<void>
  /** Restores a backup into the file named second, and opens that. */
  restore(input: ParsedInput<'backup.restore'>, target: string): Promise<Begun<'backup.restore'>>
  /** Backs an open collection up, where something was written since the last time. */
  backUpIfWritten(collection: OpenCollection, label: 'at start' | 'before import'): Promise<void>
  /** Stops the backups under way; nothing of them is left. */
  stopBackups(): Promise<void>
  /** Computes some of what screens will ask of a whole collection, and tells how much is left. */
  warmCaches(collection: OpenCollection): number
  /** The backups of a collection, open or not. */
  listBackups(
    file: string,
    open: OpenCollection | null,
    trouble: UntoldProblem['sentence'] | null,
  ): Result<'backup.list'>
  /** How the library of a collection writes. */
  speech(collection: OpenCollection): LibrarySpeech
  run<N extends ServiceName>(collection: OpenCollection, name: N, input: ParsedInput<N>): Promise<Result<N>>
}
