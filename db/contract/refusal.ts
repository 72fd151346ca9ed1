import type { Message } from '../messages/message.ts'
import type { ProblemCode, UntoldProblem } from './problem.ts'

/** Thrown by a service that does nothing: carries the problem that the caller is answered with. */
export class Refusal extends Error {
  readonly problem: UntoldProblem

  constructor(problem: UntoldProblem) {
    super(problem.code)
    this.name = 'Refusal'
    this.problem = problem
  }
}

type More = Partial<Pick<UntoldProblem, 'field' | 'todo' | 'choices' | 'asks'>>

/** A problem that names no field and nothing to do or to choose, but for what is given. */
export function problem(code: ProblemCode, sentence: Message | string, more: More = {}): UntoldProblem {
  return { code, sentence, field: null, todo: null, choices: [], ...more }
}

/** Refuses: throws a {@link Refusal} with this code and sentence. */
export function refuse(code: ProblemCode, sentence: Message | string, more: More = {}): never {
  throw new Refusal(problem(code, sentence, more))
}
