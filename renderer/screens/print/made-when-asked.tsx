import { useState } from 'react'
import { useRead } from '../../shared/client/use-read.ts'
import { PaperPages } from '../../shared/labels/paper-pages.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import { millimetres } from './use-sheet.ts'

function Making() {
  return (
    <p className="soft" role="status">
      Making the pages…
    </p>
  )
}

/** The list of what can be had now. */
export function Catalogue() {
  const pages = useRead('catalogue.print', {})
  return (
    <section aria-label="Seed to be had">
      <h2>Seed to be had</h2>
      <p className="soft">
        What can be spared now: nothing that must be kept, is in quarantine, regulated or protected.
      </p>
      {pages.error !== null && <ProblemText problem={pages.error.problem} />}
      {pages.isPending && <Making />}
      {pages.data !== undefined && <PaperPages name="The list" made={pages.data} />}
    </section>
  )
}

/** The report of a year that the keeper types, this one to begin with. */
export function YearReport() {
  const today = useRead('collection.get', {}).data?.today
  const [typed, setTyped] = useState<string | null>(null)
  const shown = typed ?? today?.slice(0, 4) ?? ''
  const year = /^\d{4}$/.test(shown.trim()) && Number(shown) >= 1800 ? Number(shown) : null
  const pages = useRead('report.print', year === null ? null : { year }, { keepLast: true })
  return (
    <section aria-label="The report of a year">
      <h2>The report of a year</h2>
      <TextField
        label="Year"
        size="record"
        value={shown}
        onChange={setTyped}
        problem={shown === '' || year !== null ? undefined : 'Type a year with four digits, such as 2026.'}
      />
      {pages.error !== null && <ProblemText problem={pages.error.problem} />}
      {pages.isPending && year !== null && <Making />}
      {pages.data !== undefined && <PaperPages name="The report" made={pages.data} />}
    </section>
  )
}

/** A page to hold a ruler against, moved as the keeper types. */
export function Ruler() {
  const [right, setRight] = useState('0')
  const [down, setDown] = useState('0')
  const offset = [millimetres(right), millimetres(down)] as const
  const [x, y] = offset
  const pages = useRead('ruler.print', x === null || y === null ? null : { offsetMm: [x, y] }, {
    keepLast: true,
  })
  const shift = (label: string, value: string, change: (typed: string) => void) => (
    <TextField
      label={label}
      size="record"
      value={value}
      onChange={change}
      problem={millimetres(value) === null ? 'Type millimetres from -10 to 10.' : undefined}
    />
  )
  return (
    <section aria-label="A page to hold a ruler against">
      <h2>A page to hold a ruler against</h2>
      <p className="soft">
        Shows whether the printer keeps the scale, and by how much it prints beside the mark.
      </p>
      <div className="pair">
        {shift('Move right, mm', right, setRight)}
        {shift('Move down, mm', down, setDown)}
      </div>
      {pages.error !== null && <ProblemText problem={pages.error.problem} />}
      {pages.data !== undefined && <PaperPages name="The ruler page" made={pages.data} />}
    </section>
  )
}
