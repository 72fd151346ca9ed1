import type { OperationName, ParsedInput, Result } from '../contract/contract.ts'
import type { Handlers, Reading } from './book/context.ts'
import { bookOperations } from './book/operations.ts'
import { collectionOperations } from './collection/operations.ts'
import { entryLogOperations } from './entry-log/operations.ts'
import { exchangeOperations } from './exchange/operations.ts'
import { forecastOperations } from './forecast/operations.ts'
import { germinationOperations } from './germination/operations.ts'
import { intakeOperations } from './intake/operations.ts'
import { peopleOperations } from './people/operations.ts'
import { printOperations } from './print/operations.ts'
import type { printing } from './print/printing.ts'
import { recallOperations } from './recall/operations.ts'
import { regrowOperations } from './regrow/operations.ts'
import { stockOperations } from './stock/operations.ts'
import { storageOperations } from './storage/operations.ts'

/** The operations that a service answers; the rest change which collection is open, which is the host's to do. */
export type ServiceName = Exclude<
  OperationName,
  'collection.create' | 'collection.open-demo' | 'backup.list' | 'backup.restore'
>

/** Every operation of a service has its handler: those of the rooms here, those that print when they are first called. */
const handlers: Handlers<Exclude<ServiceName, keyof typeof printing>> = {
  ...bookOperations,
  ...collectionOperations,
  ...entryLogOperations,
  ...exchangeOperations,
  ...forecastOperations,
  ...germinationOperations,
  ...intakeOperations,
  ...peopleOperations,
  ...printOperations,
  ...recallOperations,
  ...regrowOperations,
  ...stockOperations,
  ...storageOperations,
}

/** Answers an operation; a write is given a Writing, and leaves the entry's id to whoever runs it. */
type Answering<N extends ServiceName> = (
  given: Reading,
  input: ParsedInput<N>,
) => Result<N> | Promise<Result<N>>

/** What answers an operation. */
export async function handlerOf<N extends ServiceName>(name: N): Promise<Answering<N>> {
  const found = name in handlers ? handlers : (await import('./print/printing.ts')).printing
  return found[name as keyof typeof found] as Answering<N>
}
