import type { Problem } from '../../../db/contract/problem.ts'
import { SaveOpenBook } from './save-open-book.tsx'

interface ProblemTextProps {
  readonly problem: Problem
  /** Takes one of the texts that can be given instead. */
  readonly onChoose?: (choice: string) => void
  readonly id?: string
}

/** Why nothing was done, what to do about it, and the choices as buttons. */
export function ProblemText({ problem, onChoose, id }: ProblemTextProps) {
  return (
    <div className="note" role="alert" {...(id === undefined ? {} : { id })}>
      <p>{problem.sentence}</p>
      {problem.todo !== null && <p className="soft">{problem.todo}</p>}
      {problem.code === 'file-moved' && <SaveOpenBook />}
      {onChoose !== undefined && problem.choices.length > 0 && (
        <p className="buttons">
          {problem.choices.map((choice) => (
            <button key={choice} type="button" className="quiet-button" onClick={() => onChoose(choice)}>
              {choice}
            </button>
          ))}
        </p>
      )}
    </div>
  )
}
