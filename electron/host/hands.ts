import type { ParsedInput, Value } from '../../db/contract/contract.ts'
import type { OpenCollection } from '../../db/migrations/open-file.ts'
import type { ServiceName } from '../../db/services/run-operation.ts'

/** A collection just begun, open for writing, and what its first entry says. */
export interface Begun {
  readonly collection: OpenCollection
  readonly value: Value<'collection.start'>
}

/** What the host does with collections: the services, the clock and the random source behind one small wall. */
export interface Hands {
  open(file: string, access: 'read' | 'write'): Promise<OpenCollection>
  begin(file: string, input: ParsedInput<'collection.start'>): Promise<Begun>
  makeDemo(file: string): Promise<void>
  run<N extends ServiceName>(collection: OpenCollection, name: N, input: ParsedInput<N>): Promise<Value<N>>
}
