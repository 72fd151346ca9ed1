import { useState } from 'react'
import { isoDate, yearOf } from '../../../db/domain/dates/iso-date.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { useDraft } from '../../shared/table-form/use-draft.ts'
import '../../shared/table-form/table-frame.css'
import './returns.css'
import { emptyReturn, isBlankReturn, type ReturnDraft, type ReturnStep, stepReturn } from './return-draft.ts'
import { ReturnTable } from './return-table.tsx'
import type { TakenBack } from './returned-list.tsx'

const RULES = {
  kind: 'take-back',
  blank: emptyReturn,
  step: stepReturn,
  isBlank: isBlankReturn,
} as const

/** Take back: what somebody grew from the library's seed, as a new lot, and the promises that it keeps. */
export function ReturnsScreen() {
  const visit = useDraft<ReturnDraft, ReturnStep>(RULES)
  const about = useRead('collection.get', {})
  const [taken, setTaken] = useState<readonly TakenBack[]>([])
  if (about.error) return <ProblemText problem={about.error.problem} />
  if (visit.draft === null || about.data === undefined) return <p className="soft waiting">Opening…</p>
  const today = isoDate(about.data.today)
  return (
    <ReturnTable
      visit={visit}
      draft={visit.draft}
      today={today}
      thisYear={yearOf(today)}
      taken={taken}
      onSaved={(lot, personId) => {
        visit.dispatch({ kind: 'saved', personId, key: crypto.randomUUID() })
        setTaken((before) => [lot, ...before])
      }}
      onNextPerson={() => {
        visit.dispatch({ kind: 'next-person', key: crypto.randomUUID() })
        setTaken([])
      }}
    />
  )
}
