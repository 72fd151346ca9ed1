import { Fragment, useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import type { SheetMeasures } from '../../../db/contract/print-operations.ts'
import { readNumber } from '../../../db/domain/amounts/read-number.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

type OwnSheet = Value<'label-sheet.list'>['sheets'][number]
type Typed = Record<keyof SheetMeasures, string>

/** What is measured of a sheet, in the order in which it is measured. */
const MEASURES: readonly (readonly [field: Exclude<keyof SheetMeasures, 'name'>, label: string])[] = [
  ['pageWidthMm', 'Page, width in mm'],
  ['pageHeightMm', 'Page, height in mm'],
  ['columns', 'Labels side by side'],
  ['rows', 'Labels one below another'],
  ['widthMm', 'Label, width in mm'],
  ['heightMm', 'Label, height in mm'],
  ['leftMm', 'Left edge to first label, mm'],
  ['topMm', 'Top edge to first label, mm'],
  ['pitchXMm', 'Left edge of a label to the next, mm'],
  ['pitchYMm', 'Top edge of a label to the next, mm'],
]
const A4 = { pageWidthMm: '210', pageHeightMm: '297' }
const LETTER = { pageWidthMm: '215.9', pageHeightMm: '279.4' }

/** Label sheets that the app does not know, by their measures. */
export function OwnSheets({ paper }: { readonly paper: 'a4' | 'letter' }) {
  const sheets = useRead('label-sheet.list', {})
  const retire = useWrite('label-sheet.retire')
  const [open, setOpen] = useState<number | 'new' | null>(null)
  const own = (sheets.data?.sheets ?? []).filter((sheet) => sheet.own !== null)
  const close = () => setOpen(null)
  return (
    <section className="page-part stack-2" aria-label="Label sheets of your own">
      <h2>Label sheets of your own</h2>
      <p className="soft">Sheets the app does not know. Measure with a ruler, then try on plain paper.</p>
      {retire.error !== null && <ProblemText problem={retire.error.problem} />}
      <ul className="bullets">
        {own.map((sheet) => (
          <li key={sheet.sheet}>
            {sheet.name}{' '}
            <button type="button" className="word-button" onClick={() => setOpen(idOf(sheet))}>
              change<span className="only-aloud">: {sheet.name}</span>
            </button>{' '}
            <ActionButton
              className="word-button"
              off={retire.isPending}
              onClick={() => retire.mutate({ sheetId: idOf(sheet) })}
            >
              offer no more<span className="only-aloud">: {sheet.name}</span>
            </ActionButton>
            {open === idOf(sheet) && <SheetForm sheet={sheet} start={typedFrom(sheet)} onClose={close} />}
          </li>
        ))}
      </ul>
      {open === 'new' ? (
        <SheetForm sheet={null} start={emptySheet(paper)} onClose={close} />
      ) : (
        <button type="button" className="quiet-button" onClick={() => setOpen('new')}>
          Add a label sheet
        </button>
      )}
    </section>
  )
}

interface SheetFormProps {
  readonly sheet: OwnSheet | null
  readonly start: Typed
  readonly onClose: () => void
}

function SheetForm({ sheet, start, onClose }: SheetFormProps) {
  const form = useCardForm({ empty: start, writes: 'label-sheet.create', onClose })
  const measures = readMeasures(form.typed)
  const field = (name: keyof SheetMeasures, label: string) => (
    <Fragment key={name}>
      {form.textField(name, label, { path: `measures.${name}`, problem: unread(name, form.typed[name]) })}
    </Fragment>
  )
  return (
    <CardForm
      title={sheet === null ? 'A label sheet of your own' : `Change ${sheet.name}`}
      sendWord="Keep this sheet"
      {...form.sending(measures && { sheetId: sheet === null ? null : idOf(sheet), measures })}
    >
      <div className="card-form-wide">{field('name', 'What you call it')}</div>
      {MEASURES.map(([name, label]) => field(name, label))}
    </CardForm>
  )
}

function unread(name: keyof SheetMeasures, typed: string): string | undefined {
  const readable = name === 'name' || typed.trim() === '' || readMeasure(typed) !== null
  return readable ? undefined : 'Type a number, such as 63.5.'
}

function idOf({ sheet }: OwnSheet): number {
  return Number(sheet.replace('own-', ''))
}

function typedFrom({ own }: OwnSheet): Typed {
  const entries = Object.entries(own ?? {}).map(([name, value]) => [name, String(value)])
  return Object.fromEntries(entries) as Typed
}

function emptySheet(paper: 'a4' | 'letter'): Typed {
  const blank = Object.fromEntries(MEASURES.map(([name]) => [name, ''])) as Typed
  return { ...blank, name: '', ...(paper === 'a4' ? A4 : LETTER) }
}

/** A measure; 66.675 mm are no thousands. */
function readMeasure(typed: string): number | null {
  const read = readNumber(typed)
  if (read.kind === 'ask') return read.decimal
  return read.kind === 'number' ? read.value : null
}

/** The measures as numbers, or null while one cannot be read. A single label needs no distance to the next. */
function readMeasures(typed: Typed): SheetMeasures | null {
  const values = new Map<string, number>()
  for (const [name] of MEASURES) {
    const spared =
      (name === 'pitchXMm' && typed.columns === '1') || (name === 'pitchYMm' && typed.rows === '1')
    const value = readMeasure(spared && typed[name].trim() === '' ? '0' : typed[name])
    if (value === null) return null
    values.set(name, value)
  }
  return { ...(Object.fromEntries(values) as Omit<SheetMeasures, 'name'>), name: typed.name }
}
