import { useState } from 'react'
import { useRead } from '../../shared/client/use-read.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import '../../shared/table-form/table-frame.css'
import { useDraft } from '../../shared/table-form/use-draft.ts'
import { emptyPaper, isBlankPaper, type PaperDraft, type PaperStep, stepPaper } from './paper-draft.ts'
import { PaperTable } from './paper-table.tsx'

const RULES = { kind: 'paper-sheet', blank: emptyPaper, step: stepPaper, isBlank: isBlankPaper } as const

/** A paper sign-out sheet, typed in afterwards as one entry. */
export function PaperSheetScreen() {
  const visit = useDraft<PaperDraft, PaperStep>(RULES)
  const about = useRead('collection.get', {})
  const [last, setLast] = useState<number | null>(null)
  if (about.error) return <ProblemText problem={about.error.problem} />
  if (visit.draft === null || about.data === undefined) return <p className="soft waiting">Opening…</p>
  return (
    <PaperTable
      visit={visit}
      draft={visit.draft}
      today={about.data.today}
      last={last}
      onSaved={(lines) => {
        visit.dispatch({ kind: 'next-sheet', key: crypto.randomUUID() })
        setLast(lines)
      }}
    />
  )
}
