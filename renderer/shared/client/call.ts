import type { CallInput, OperationName, Value } from '../../../db/contract/contract.ts'
import { noteManner } from '../format/manner.ts'
import { noteConnection } from './connection.ts'
import { NoAnswer, ProblemError } from './problem-error.ts'
import { send } from './transport.ts'

/** Calls an operation. Throws ProblemError when it did nothing, NoAnswer when nobody answered. */
export async function call<N extends OperationName>(name: N, input: CallInput<N>): Promise<Value<N>> {
  const answer = await answerTo(name, input)
  if (!answer.ok) throw new ProblemError(answer.problem)
  const value = answer.value as Value<N>
  if (name === 'collection.get') noteManner((value as Value<'collection.get'>).settings)
  return value
}

async function answerTo(name: OperationName, input: unknown) {
  try {
    const answer = await send(name, input)
    noteConnection('there')
    return answer
  } catch (thrown) {
    if (thrown instanceof NoAnswer) noteConnection('away')
    throw thrown
  }
}
