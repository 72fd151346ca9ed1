import type { ListQuestion } from '../../contract/intake-operations.ts'
import type { Untold } from '../../contract/told.ts'
import { message } from '../../messages/message.ts'

type Asked = Omit<Untold<ListQuestion>, 'rows' | 'firstRow' | 'answered'>
/** One thing that a question may be answered with. */
export type Choice = Asked['choices'][number]

interface Kept extends Asked {
  rows: number
  readonly firstRow: number
}

/** The answer that leaves the rows it concerns out. */
export const LEAVE_OUT = 'leave-out'
export const LEAVE_OUT_CHOICE = { value: LEAVE_OUT, words: message('import.leave-rows-out') }

/** The questions of a list, each once however many rows wait for it, and what the keeper answered. */
export class ListQuestions {
  readonly #answers: Readonly<Record<string, string>>
  readonly #asked = new Map<string, Kept>()

  constructor(answers: Readonly<Record<string, string>>) {
    this.#answers = answers
  }

  /** The answer to a question, or null while it is open. Asking again counts another row. */
  ask(row: number, id: string, question: () => Omit<Asked, 'id'>): string | null {
    const kept = this.#asked.get(id) ?? { id, ...question(), rows: 0, firstRow: row }
    kept.rows += 1
    this.#asked.set(id, kept)
    const answer = this.#answers[id]
    const fits = kept.choices.some(({ value }) => value === answer)
    return answer !== undefined && (fits || (kept.about === 'crop' && answer.startsWith('crop:')))
      ? answer
      : null
  }

  /** The questions in the order asked, those still open first. */
  listed(): Untold<ListQuestion>[] {
    const all = [...this.#asked.values()].map((question) => ({
      ...question,
      answered: this.#answers[question.id] ?? null,
    }))
    return [
      ...all.filter(({ answered }) => answered === null),
      ...all.filter(({ answered }) => answered !== null),
    ]
  }
}
