import { useState } from 'react'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { useDraft } from '../../shared/table-form/use-draft.ts'
import '../../shared/table-form/table-frame.css'
import './hand-out.css'
import {
  emptyHandOut,
  type HandOutDraft,
  type HandOutStep,
  isBlankHandOut,
  stepHandOut,
} from './hand-out-draft.ts'
import { HandOutTable } from './hand-out-table.tsx'
import type { HandedOut } from './handed-out.tsx'

const RULES = {
  kind: 'hand-out',
  blank: emptyHandOut,
  step: stepHandOut,
  isBlank: isBlankHandOut,
} as const

/** Hand out: a member's packets at the table, and what is left of each lot. */
export function HandOutScreen() {
  const visit = useDraft<HandOutDraft, HandOutStep>(RULES)
  const about = useRead('collection.get', {})
  const [last, setLast] = useState<HandedOut | null>(null)
  if (about.error) return <ProblemText problem={about.error.problem} />
  if (visit.draft === null || about.data === undefined) return <p className="soft waiting">Opening…</p>
  return (
    <HandOutTable
      visit={visit}
      draft={visit.draft}
      today={isoDate(about.data.today)}
      last={last}
      onSaved={(done) => {
        visit.dispatch({ kind: 'next-member', key: crypto.randomUUID() })
        setLast(done)
      }}
    />
  )
}
