import { useState } from 'react'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { PaperPages } from '../../shared/labels/paper-pages.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

/** The stocktake on paper: every place with its lots and columns to write in. */
export function StocktakeSheet() {
  const [open, setOpen] = useState(false)
  const { t } = useTexts()
  const sheet = useRead('stocktake.sheet', open ? {} : null)
  return (
    <section aria-label={t('stocktake.on-paper')}>
      <button type="button" className="quiet-button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {t('stocktake.sheet')}
      </button>
      {open && sheet.error !== null && <ProblemText problem={sheet.error.problem} />}
      {open && sheet.isPending && (
        <p className="soft" role="status">
          {t('stocktake.making-pages')}
        </p>
      )}
      {open && sheet.data !== undefined && <PaperPages name={t('stocktake.sheet-name')} made={sheet.data} />}
    </section>
  )
}
