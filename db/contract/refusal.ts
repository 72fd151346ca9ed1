import type { Problem, ProblemCode } from './problem.ts'

/** Thrown by a service that does nothing: carries the problem that the caller is answered with. */
export class Refusal extends Error {
  readonly problem: Problem

  constructor(problem: Problem) {
    super(problem.sentence)
    this.name = 'Refusal'
    this.problem = problem
  }
}

type More = Partial<Pick<Problem, 'field' | 'todo' | 'choices' | 'asks'>>

/** A problem that names no field and nothing to do or to choose, but for what is given. */
export function problem(code: ProblemCode, sentence: string, more: More = {}): Problem {
  return { code, sentence, field: null, todo: null, choices: [], ...more }
}

/** Refuses: throws a {@link Refusal} with this code and sentence. */
export function refuse(code: ProblemCode, sentence: string, more: More = {}): never {
  throw new Refusal(problem(code, sentence, more))
}
