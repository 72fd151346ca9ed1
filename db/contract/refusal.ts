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

/** Refuses: throws a {@link Refusal} with this code and sentence. */
export function refuse(
  code: ProblemCode,
  sentence: string,
  more: Partial<Pick<Problem, 'field' | 'todo' | 'choices' | 'asks'>> = {},
): never {
  throw new Refusal({ code, sentence, field: null, todo: null, choices: [], ...more })
}
