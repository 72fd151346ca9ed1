import { useState } from 'react'
import { isoDate, yearOf } from '../../../db/domain/dates/iso-date.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { useDraft } from '../../shared/table-form/use-draft.ts'
import '../../shared/table-form/table-frame.css'
import './take-in.css'
import { emptyVisit, isBlankVisit, stepTakeIn, type TakeInDraft, type TakeInStep } from './take-in-draft.ts'
import { TakeInTable } from './take-in-table.tsx'
import { type SavedVisit, TakenIn } from './taken-in.tsx'

const RULES = {
  kind: 'take-in',
  blank: (key: string) => emptyVisit(key),
  step: stepTakeIn,
  isBlank: isBlankVisit,
} as const

/** Take in: a donor's gifts at the table, from the first envelope to their numbers. */
export function TakeInScreen() {
  const visit = useDraft<TakeInDraft, TakeInStep>(RULES)
  const about = useRead('collection.get', {})
  const [saved, setSaved] = useState<SavedVisit | null>(null)
  if (about.error) return <ProblemText problem={about.error.problem} />
  if (visit.draft === null || about.data === undefined) return <p className="soft waiting">Opening…</p>
  if (saved !== null) return <TakenIn visit={saved} onNextDonor={() => setSaved(null)} />
  const today = isoDate(about.data.today)
  return (
    <TakeInTable
      visit={visit}
      draft={visit.draft}
      today={today}
      thisYear={yearOf(today)}
      onSaved={(done) => {
        visit.dispatch({ kind: 'next-donor', key: crypto.randomUUID() })
        setSaved(done)
      }}
    />
  )
}
