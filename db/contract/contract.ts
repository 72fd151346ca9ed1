import type { z } from 'zod'
import { careOperations } from './care-operations.ts'
import { cautionOperations } from './caution-operations.ts'
import { collectionOperations } from './collection-operations.ts'
import { elsewhereOperations } from './elsewhere-operations.ts'
import { exportOperations } from './export-operations.ts'
import { germinationOperations } from './germination-operations.ts'
import { intakeOperations } from './intake-operations.ts'
import { keepingOperations } from './keeping-operations.ts'
import type { Operation } from './operation.ts'
import { peopleOperations } from './people-operations.ts'
import { printOperations } from './print-operations.ts'
import { recallOperations } from './recall-operations.ts'
import { referenceOperations } from './reference-operations.ts'
import { regenerationOperations } from './regeneration-operations.ts'
import { returnOperations } from './return-operations.ts'
import { stockOperations } from './stock-operations.ts'
import { storageOperations } from './storage-operations.ts'
import { termsOperations } from './terms-operations.ts'
import type { Untold } from './told.ts'
import { withdrawalOperations } from './withdrawal-operations.ts'

/** Every operation that a window, a script or a test may call, by name. The one way into a collection. */
export const contract = {
  ...collectionOperations,
  ...referenceOperations,
  ...peopleOperations,
  ...intakeOperations,
  ...returnOperations,
  ...stockOperations,
  ...termsOperations,
  ...keepingOperations,
  ...cautionOperations,
  ...withdrawalOperations,
  ...elsewhereOperations,
  ...recallOperations,
  ...germinationOperations,
  ...storageOperations,
  ...careOperations,
  ...regenerationOperations,
  ...printOperations,
  ...exportOperations,
} as const satisfies Record<string, Operation>

export type OperationName = keyof typeof contract
/** What a caller may send: defaults may be left out. */
export type CallInput<N extends OperationName> = z.input<(typeof contract)[N]['input']>
/** What a handler gets: parsed, defaults filled in. */
export type ParsedInput<N extends OperationName> = z.output<(typeof contract)[N]['input']>
/** What an operation answers, told in the caller's language. */
export type Value<N extends OperationName> = z.output<(typeof contract)[N]['output']>

/** What a service gives of it, before it is told in any language. */
export type Result<N extends OperationName> = Untold<Value<N>>

/** What the service of a write answers; the entry's id is added by whoever runs it. */
export type WriteResult<N extends WriteName> = Omit<Result<N>, 'entryId'>

type NamesOf<A extends Operation['access']> = {
  [N in OperationName]: (typeof contract)[N]['access'] extends A ? N : never
}[OperationName]

export type ReadName = NamesOf<'reads'>
export type SaveName = NamesOf<'keeps'>
export type WriteName = NamesOf<'writes'>

/** Whether a name that came from outside names an operation. */
export function isOperationName(name: string): name is OperationName {
  return Object.hasOwn(contract, name)
}
