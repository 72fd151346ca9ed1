import type { Problem } from '../../../db/contract/problem.ts'
import { ProblemText } from '../parts/problem-text.tsx'

interface SaveTroubleProps {
  /** Why the last save was refused, where no field shows it. */
  readonly refused: Problem | null | undefined
  /** Whether what is typed was kept as a draft. */
  readonly kept: boolean
}

/** What stands in the way of a table's work being saved, above the button that saves it. */
export function SaveTrouble({ refused, kept }: SaveTroubleProps) {
  return (
    <>
      {refused && <ProblemText problem={refused} />}
      {!kept && <p className="table-field-warning">What you type cannot be kept just now. Save soon.</p>}
    </>
  )
}
