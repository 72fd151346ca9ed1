import type { Problem } from '../../../db/contract/problem.ts'
import type { Told } from '../../../db/contract/told.ts'

/** What a call throws when nothing was done: the problem as the keeper should read it. */
export class ProblemError extends Error {
  readonly problem: Problem

  constructor(problem: Problem) {
    super(problem.sentence)
    this.name = 'ProblemError'
    this.problem = problem
  }
}

/** The call got no answer. Whether it acted is not known: ask again with the same key. */
export class NoAnswer extends ProblemError {
  constructor() {
    super({
      code: 'unexpected',
      sentence: 'The drawer does not answer just now. What you typed is still here.' as Told,
      field: null,
      todo: 'Try again in a moment. If it stays away, close this window and start the app again.' as Told,
      choices: [],
    })
    this.name = 'NoAnswer'
  }
}
