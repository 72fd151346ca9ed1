import { useState } from 'react'
import { useRead } from '../../shared/client/use-read.ts'
import { PaperPages } from '../../shared/labels/paper-pages.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

/** The stocktake on paper: every place with its lots and columns to write in. */
export function StocktakeSheet() {
  const [open, setOpen] = useState(false)
  const sheet = useRead('stocktake.sheet', open ? {} : null)
  return (
    <section aria-label="On paper">
      <button type="button" className="quiet-button" aria-expanded={open} onClick={() => setOpen(!open)}>
        Sheet to write on, for all places
      </button>
      {open && sheet.error !== null && <ProblemText problem={sheet.error.problem} />}
      {open && sheet.isPending && (
        <p className="soft" role="status">
          Making the pages…
        </p>
      )}
      {open && sheet.data !== undefined && <PaperPages name="The stocktake sheet" made={sheet.data} />}
    </section>
  )
}
