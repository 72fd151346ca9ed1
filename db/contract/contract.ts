import type { z } from 'zod'
import { collectionOperations } from './collection-operations.ts'
import { intakeOperations } from './intake-operations.ts'
import type { Operation } from './operation.ts'
import { paperOperations } from './paper-operations.ts'
import { referenceOperations } from './reference-operations.ts'
import { stockOperations } from './stock-operations.ts'

/** Every operation that a window, a script or a test may call, by name. The one way into a collection. */
export const contract = {
  ...collectionOperations,
  ...referenceOperations,
  ...intakeOperations,
  ...stockOperations,
  ...paperOperations,
} as const satisfies Record<string, Operation>

export type OperationName = keyof typeof contract
/** What a caller may send: defaults may be left out. */
export type CallInput<N extends OperationName> = z.input<(typeof contract)[N]['input']>
/** What a handler gets: parsed, defaults filled in. */
export type ParsedInput<N extends OperationName> = z.output<(typeof contract)[N]['input']>
/** What an operation answers. */
export type Value<N extends OperationName> = z.output<(typeof contract)[N]['output']>

export type ReadName = {
  [N in OperationName]: (typeof contract)[N]['access'] extends 'reads' ? N : never
}[OperationName]
export type WriteName = Exclude<OperationName, ReadName>

/** Whether a name that came from outside names an operation. */
export function isOperationName(name: string): name is OperationName {
  return Object.hasOwn(contract, name)
}
