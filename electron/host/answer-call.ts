import {
  contract,
  isOperationName,
  type OperationName,
  type ParsedInput,
} from '../../db/contract/contract.ts'
import type { Answer, Problem } from '../../db/contract/problem.ts'
import { problem } from '../../db/contract/refusal.ts'
import type { Log } from './log.ts'
import { problemOfText } from './plain-text.ts'
import { problemOf, traceOf } from './problem-of.ts'
import { parseInput, problemOfInput } from './problem-of-input.ts'

/** Whoever runs an operation whose input fits the contract. */
export interface Runner {
  run<N extends OperationName>(name: N, input: ParsedInput<N>): Promise<unknown>
}

const UNKNOWN = problem('unknown-operation', 'There is no operation of that name. Nothing was done.', {
  todo: 'Look at the list of operations: npm run -s call -- operations',
})

/**
 * Answers one call, from wherever it came: checks the name and the input, runs it, wraps the answer.
 *
 * Never throws. A call that fails has written nothing. The log gets what was not expected, never the input.
 */
export async function answerCall(
  runner: Runner,
  name: unknown,
  raw: unknown,
  log: Log,
): Promise<Answer<unknown>> {
  if (typeof name !== 'string' || !isOperationName(name)) return refused(UNKNOWN)
  const parsed = parseInput(contract[name].input, raw)
  if (!parsed.success) return refused(problemOfInput(parsed.error))
  const unreadable = problemOfText(parsed.data)
  if (unreadable !== null) return refused(unreadable)
  try {
    return { ok: true, value: await runner.run(name, parsed.data as ParsedInput<typeof name>) }
  } catch (thrown) {
    const told = problemOf(thrown)
    if (told.code === 'unexpected') log(`${name} ${traceOf(thrown)}`)
    return refused(told)
  }
}

function refused(told: Problem): Answer<never> {
  return { ok: false, problem: told }
}
