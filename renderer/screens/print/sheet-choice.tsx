import { useTexts } from '../../shared/format/use-texts.ts'
import { SheetPicture } from '../../shared/labels/sheet-picture.tsx'
import { CheckField, SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { millimetres, type SheetInUse } from './use-sheet.ts'

interface SheetChoiceProps {
  readonly using: SheetInUse
  readonly labels: number
}

/** The sheet in the printer, its first free label, and how far this printer prints beside the mark. */
export function SheetChoice({ using, labels }: SheetChoiceProps) {
  const { t } = useTexts()
  const { sheets, sheet, startAt, right, down } = using
  if (sheet === undefined) return null
  return (
    <section className="print-sheet" aria-label={t('print.sheet')}>
      <div className="print-sheet-fields fields">
        <SelectField
          label={t('print.sheet-in-printer')}
          value={sheet.sheet}
          options={sheets.map((each) => ({ value: each.sheet, label: each.name }))}
          onChange={using.pick}
        />
        <SelectField
          label={t('print.says')}
          value={using.says}
          options={[
            { value: 'what-fits', label: t('print.says-what-fits') },
            { value: 'number-only', label: t('print.says-number') },
          ]}
          onChange={using.say}
        />
        <TextField
          label={t('print.printer')}
          value={using.printer}
          onChange={using.usePrinter}
          hint={t('print.printer-hint')}
        />
        <Shift right={right} down={down} onChange={using.type} />
        <CheckField
          label={t('print.crop-marks')}
          step="cropMarks"
          checked={using.cropMarks}
          onChange={using.mark}
        />
        <p className="soft">{t('print.try-plain')}</p>
      </div>
      <SheetPicture
        columns={sheet.columns}
        rows={sheet.rows}
        startAt={startAt}
        labels={labels}
        onStartAt={(next) => using.type({ startAt: next })}
      />
    </section>
  )
}

interface ShiftProps {
  readonly right: string
  readonly down: string
  readonly onChange: (part: { readonly right?: string; readonly down?: string }) => void
}

/** How far a print is moved, right and down. */
export function Shift({ right, down, onChange }: ShiftProps) {
  const { t } = useTexts()
  const field = (label: string, name: 'right' | 'down', value: string) => (
    <TextField
      label={label}
      value={value}
      onChange={(typed) => onChange({ [name]: typed })}
      problem={millimetres(value) === null ? t('print.millimetres') : undefined}
    />
  )
  return (
    <div className="pair">
      {field(t('print.move-right'), 'right', right)}
      {field(t('print.move-down'), 'down', down)}
    </div>
  )
}
