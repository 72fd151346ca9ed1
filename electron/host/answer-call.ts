import {
  contract,
  isOperationName,
  type OperationName,
  type ParsedInput,
} from '../../db/contract/contract.ts'
import type { Answer, UntoldProblem } from '../../db/contract/problem.ts'
import { problem } from '../../db/contract/refusal.ts'
import type { Untold } from '../../db/contract/told.ts'
import type { LanguageCode } from '../../db/messages/languages.ts'
import { message } from '../../db/messages/message.ts'
import { tellAll } from '../../db/messages/tell.ts'
import { type LibrarySpeech, textsOf, UNTIL_OPEN } from '../../db/messages/texts-of.ts'
import type { Log } from './log.ts'
import { problemOfText } from './plain-text.ts'
import { problemOf, traceOf } from './problem-of.ts'
import { parseInput, problemOfInput } from './problem-of-input.ts'

/** Whoever runs an operation whose input fits the contract. */
export interface Runner {
  /** What it answers or refuses is not told in any language yet. */
  run<N extends OperationName>(name: N, input: ParsedInput<N>): Promise<unknown>
  /** How the library writes that the last call was about; null where none is open. */
  speech(): LibrarySpeech | null
}

/**
 * Answers one call, from wherever it came: checks the name and the input, runs it, tells the answer in the caller's
 * language; null: in the library's.
 *
 * Never throws. A call that fails has written nothing. The log gets what was not expected, never the input.
 */
export async function answerCall(
  runner: Runner,
  name: unknown,
  raw: unknown,
  log: Log,
  language: LanguageCode | null = null,
): Promise<Answer<unknown>> {
  const answer = await untold(runner, name, raw, log)
  const texts = await textsOf(runner.speech() ?? UNTIL_OPEN, language)
  return tellAll(answer, texts.say) as Answer<unknown>
}

async function untold(
  runner: Runner,
  name: unknown,
  raw: unknown,
  log: Log,
): Promise<Untold<Answer<unknown>>> {
  if (typeof name !== 'string' || !isOperationName(name))
    return refused(
      problem('unknown-operation', message('problem.unknown-operation'), {
        todo: message('problem.unknown-operation-todo'),
      }),
    )
  const parsed = parseInput(contract[name].input, raw)
  if (!parsed.success) return refused(problemOfInput(parsed.error))
  const unreadable = problemOfText(parsed.data)
  if (unreadable !== null) return refused(unreadable)
  try {
    return { ok: true, value: await runner.run(name, parsed.data as ParsedInput<typeof name>) }
  } catch (thrown) {
    const why = problemOf(thrown)
    if (why.code === 'unexpected') log(`${name} ${traceOf(thrown)}`)
    return refused(why)
  }
}

function refused(problem: UntoldProblem): Untold<Answer<never>> {
  return { ok: false, problem }
}
