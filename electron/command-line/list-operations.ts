import { z } from 'zod'
import { contract } from '../../db/contract/contract.ts'
import type { Operation } from '../../db/contract/operation.ts'

export interface ListedOperation {
  readonly name: string
  readonly access: Operation['access']
  readonly summary: string
  /** JSON Schema of what is sent; defaults may be left out. */
  readonly input: unknown
  /** JSON Schema of what is answered. */
  readonly output: unknown
}

/** Every operation of the contract, for whoever writes a script. */
export function listOperations(): readonly ListedOperation[] {
  return Object.entries(contract).map(([name, { access, summary, input, output }]) => ({
    name,
    access,
    summary,
    input: z.toJSONSchema(input, { io: 'input', unrepresentable: 'any' }),
    output: z.toJSONSchema(output, { io: 'output', unrepresentable: 'any' }),
  }))
}
