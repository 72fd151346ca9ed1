import { useState } from 'react'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { PaperPages } from '../../shared/labels/paper-pages.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { TextField } from '../../shared/table-form/fields.tsx'
import { Shift } from './sheet-choice.tsx'
import { millimetres } from './use-sheet.ts'

function Making() {
  const { t } = useTexts()
  return (
    <p className="soft" role="status">
      {t('print.making')}
    </p>
  )
}

/** The list of what can be had now. */
export function Catalogue() {
  const { t } = useTexts()
  const pages = useRead('catalogue.print', {})
  return (
    <section aria-label={t('print.catalogue')}>
      <h2>{t('print.catalogue')}</h2>
      <p className="soft">{t('print.catalogue-about')}</p>
      {pages.error !== null && <ProblemText problem={pages.error.problem} />}
      {pages.isPending && <Making />}
      {pages.data !== undefined && <PaperPages name={t('print.the-list')} made={pages.data} />}
    </section>
  )
}

/** The report of a year that the keeper types, this one to begin with. */
export function YearReport() {
  const { t } = useTexts()
  const today = useRead('collection.get', {}).data?.today
  const [typed, setTyped] = useState<string | null>(null)
  const shown = typed ?? today?.slice(0, 4) ?? ''
  const year = /^\d{4}$/.test(shown.trim()) && Number(shown) >= 1800 ? Number(shown) : null
  const pages = useRead('report.print', year === null ? null : { year }, { keepLast: true })
  return (
    <section aria-label={t('print.year-report')}>
      <h2>{t('print.year-report')}</h2>
      <TextField
        label={t('print.year')}
        value={shown}
        onChange={setTyped}
        problem={shown === '' || year !== null ? undefined : t('print.year-unread')}
      />
      {pages.error !== null && <ProblemText problem={pages.error.problem} />}
      {pages.isPending && year !== null && <Making />}
      {pages.data !== undefined && <PaperPages name={t('print.the-report')} made={pages.data} />}
    </section>
  )
}

/** A page to hold a ruler against, moved as the keeper types. */
export function Ruler() {
  const { t } = useTexts()
  const [shift, setShift] = useState({ right: '0', down: '0' })
  const [x, y] = [millimetres(shift.right), millimetres(shift.down)]
  const pages = useRead('ruler.print', x === null || y === null ? null : { offsetMm: [x, y] }, {
    keepLast: true,
  })
  return (
    <section aria-label={t('print.ruler-heading')}>
      <h2>{t('print.ruler-heading')}</h2>
      <p className="soft">{t('print.ruler-about')}</p>
      <Shift {...shift} onChange={(part) => setShift({ ...shift, ...part })} />
      {pages.error !== null && <ProblemText problem={pages.error.problem} />}
      {pages.data !== undefined && <PaperPages name={t('print.the-ruler-page')} made={pages.data} />}
    </section>
  )
}
