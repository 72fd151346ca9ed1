import type { ReactNode } from 'react'
import { type IsoDate, isoDate, yearOf } from '../../../db/domain/dates/iso-date.ts'
import { useRead } from '../client/use-read.ts'
import { useTexts } from '../format/use-texts.ts'
import { ProblemText } from '../parts/problem-text.tsx'
import './table-frame.css'
import { type DraftRules, type DraftVisit, useDraft } from './use-draft.ts'

type Update<D> = (was: D) => D

/** A table whose draft was found or begun. */
export interface OpenTable<D> {
  readonly visit: DraftVisit<D, Update<D>>
  readonly draft: D
  readonly today: IsoDate
  readonly thisYear: number
}

interface TableDraftProps<D> {
  readonly rules: Omit<DraftRules<D, never>, 'step'>
  readonly children: (open: OpenTable<D>) => ReactNode
}

/** Opens the draft of a table, and shows the table once it is there. */
export function TableDraft<D>({ rules, children }: TableDraftProps<D>) {
  const visit = useDraft<D, Update<D>>({ ...rules, step: (draft, update) => update(draft) })
  const about = useRead('collection.get', {})
  const { t } = useTexts()
  if (about.error) return <ProblemText problem={about.error.problem} />
  if (visit.draft === null || about.data === undefined)
    return <p className="soft waiting">{t('table.opening')}</p>
  const today = isoDate(about.data.today)
  return children({ visit, draft: visit.draft, today, thisYear: yearOf(today) })
}
