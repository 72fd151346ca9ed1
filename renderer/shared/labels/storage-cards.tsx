import { useState } from 'react'
import type { CallInput } from '../../../db/contract/contract.ts'
import { useRead } from '../client/use-read.ts'
import { useTexts } from '../format/use-texts.ts'
import { ProblemText } from '../parts/problem-text.tsx'
import { PaperPages } from './paper-pages.tsx'

/** How-to-keep cards for some lots, or for what went out on some slips, made when asked for. */
export function StorageCards({ of }: { readonly of: CallInput<'keep-card.print'> }) {
  const { t } = useTexts()
  const [open, setOpen] = useState(false)
  const pages = useRead('keep-card.print', open ? of : null)
  return (
    <>
      <p>
        <button type="button" className="quiet-button" aria-expanded={open} onClick={() => setOpen(!open)}>
          {t('labels.keep-cards')}
        </button>
      </p>
      {open && pages.error !== null && <ProblemText problem={pages.error.problem} />}
      {open && pages.data !== undefined && (
        <PaperPages name={t('labels.keep-cards-pages')} made={pages.data} />
      )}
    </>
  )
}
