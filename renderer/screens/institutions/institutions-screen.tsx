import { useState } from 'react'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { InstitutionVisits } from '../../shared/institutions/institution-visits.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { CheckField } from '../../shared/table-form/fields.tsx'

/** Seed that went to institutions: who has what, and what is still open. */
export function InstitutionsScreen() {
  const { t } = useTexts()
  const [openOnly, setOpenOnly] = useState(false)
  const list = useRead('institution.list', { openOnly, limit: 200 }, { keepLast: true })
  if (list.error !== null) return <ProblemText problem={list.error.problem} />
  if (list.data === undefined) return null
  const { visits, total, open } = list.data
  return (
    <div className="page">
      <h1>{t('elsewhere.institutions')}</h1>
      <p>{t('elsewhere.how-many-visits', { visits: total, open })}</p>
      <CheckField label={t('elsewhere.open-only')} checked={openOnly} onChange={setOpenOnly} />
      <details className="more">
        <summary>{t('elsewhere.why')}</summary>
        <p>{t('elsewhere.why-papers')}</p>
      </details>
      <div className="card">
        <InstitutionVisits visits={visits} />
      </div>
    </div>
  )
}
