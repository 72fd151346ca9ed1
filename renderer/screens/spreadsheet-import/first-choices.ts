import type { ListQuestion } from '../../../db/contract/intake-operations.ts'

/** The answer that leaves rows out, or says that they are in the book. */
const LEAVE_OUT = 'leave-out'

/** The first choice of every open question by id, but of those where it would leave rows out: that is asked one by one. */
export function firstChoices(questions: readonly ListQuestion[]): Record<string, string> {
  return Object.fromEntries(
    questions.flatMap(({ id, answered, choices }) => {
      const first = choices[0]?.value
      return answered === null && first !== undefined && first !== LEAVE_OUT ? [[id, first]] : []
    }),
  )
}
