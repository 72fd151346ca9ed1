import { Fragment, useState } from 'react'
import type { Value } from '../../../db/contract/contract.ts'
import type { SheetMeasures } from '../../../db/contract/print-operations.ts'
import { readNumber } from '../../../db/domain/amounts/read-number.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { CardForm } from '../../shared/card-form/card-form.tsx'
import { useCardForm } from '../../shared/card-form/use-card-form.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useWrite } from '../../shared/client/use-write.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { ProblemText } from '../../shared/parts/problem-text.tsx'

type OwnSheet = Value<'label-sheet.list'>['sheets'][number]
type Typed = Record<keyof SheetMeasures, string>

/** What is measured of a sheet, in the order in which it is measured. */
const MEASURES: readonly (readonly [field: Exclude<keyof SheetMeasures, 'name'>, label: Message])[] = [
  ['pageWidthMm', message('settings.sheet-page-width')],
  ['pageHeightMm', message('settings.sheet-page-height')],
  ['columns', message('settings.sheet-columns')],
  ['rows', message('settings.sheet-rows')],
  ['widthMm', message('settings.sheet-width')],
  ['heightMm', message('settings.sheet-height')],
  ['leftMm', message('settings.sheet-left')],
  ['topMm', message('settings.sheet-top')],
  ['pitchXMm', message('settings.sheet-pitch-x')],
  ['pitchYMm', message('settings.sheet-pitch-y')],
]
const A4 = { pageWidthMm: '210', pageHeightMm: '297' }
const LETTER = { pageWidthMm: '215.9', pageHeightMm: '279.4' }

/** Label sheets that the app does not know, by their measures. */
export function OwnSheets({ paper }: { readonly paper: 'a4' | 'letter' }) {
  const { t } = useTexts()
  const sheets = useRead('label-sheet.list', {})
  const retire = useWrite('label-sheet.retire')
  const [open, setOpen] = useState<number | 'new' | null>(null)
  const own = (sheets.data?.sheets ?? []).filter((sheet) => sheet.own !== null)
  const close = () => setOpen(null)
  return (
    <section className="page-part stack-2" aria-label={t('settings.sheets')}>
      <h2>{t('settings.sheets')}</h2>
      <p className="soft">{t('settings.sheets-hint')}</p>
      {retire.error !== null && <ProblemText problem={retire.error.problem} />}
      <ul className="bullets">
        {own.map((sheet) => (
          <li key={sheet.sheet}>
            {sheet.name}{' '}
            <button type="button" className="word-button" onClick={() => setOpen(idOf(sheet))}>
              {t('settings.change')}
              <span className="only-aloud">: {sheet.name}</span>
            </button>{' '}
            <ActionButton
              className="word-button"
              off={retire.isPending}
              onClick={() => retire.mutate({ sheetId: idOf(sheet) })}
            >
              {t('settings.offer-no-more')}
              <span className="only-aloud">: {sheet.name}</span>
            </ActionButton>
            {open === idOf(sheet) && <SheetForm sheet={sheet} start={typedFrom(sheet)} onClose={close} />}
          </li>
        ))}
      </ul>
      {open === 'new' ? (
        <SheetForm sheet={null} start={emptySheet(paper)} onClose={close} />
      ) : (
        <button type="button" className="quiet-button" onClick={() => setOpen('new')}>
          {t('settings.add-sheet')}
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
  const { t, say } = useTexts()
  const form = useCardForm({ empty: start, writes: 'label-sheet.create', onClose })
  const measures = readMeasures(form.typed)
  const field = (name: keyof SheetMeasures, label: string) => (
    <Fragment key={name}>
      {form.textField(name, label, {
        path: `measures.${name}`,
        problem: unread(name, form.typed[name]) ? t('settings.type-measure') : undefined,
      })}
    </Fragment>
  )
  return (
    <CardForm
      title={sheet === null ? t('settings.new-sheet') : t('settings.change-sheet', { sheet: sheet.name })}
      sendWord={t('settings.keep-sheet')}
      {...form.sending(measures && { sheetId: sheet === null ? null : idOf(sheet), measures })}
    >
      <div className="card-form-wide">{field('name', t('settings.sheet-name'))}</div>
      {MEASURES.map(([name, label]) => field(name, say(label)))}
    </CardForm>
  )
}

function unread(name: keyof SheetMeasures, typed: string): boolean {
  return name !== 'name' && typed.trim() !== '' && readMeasure(typed) === null
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
