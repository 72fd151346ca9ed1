import type { Problem } from '../../../db/contract/problem.ts'
import { message } from '../../../db/messages/message.ts'
import { toldNow } from '../format/texts-now.ts'

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
      sentence: toldNow(message('app.no-answer')),
      field: null,
      todo: toldNow(message('app.no-answer-todo')),
      choices: [],
    })
    this.name = 'NoAnswer'
  }
}
