import { SheetPicture } from '../../shared/labels/sheet-picture.tsx'
import { CheckField, SelectField, TextField } from '../../shared/table-form/fields.tsx'
import { millimetres, type SheetInUse } from './use-sheet.ts'

interface SheetChoiceProps {
  readonly using: SheetInUse
  readonly labels: number
}

/** The sheet in the printer, its first free label, and how far this printer prints beside the mark. */
export function SheetChoice({ using, labels }: SheetChoiceProps) {
  const { sheets, sheet, startAt, right, down } = using
  if (sheet === undefined) return null
  return (
    <section className="print-sheet" aria-label="The label sheet">
      <div className="print-sheet-fields fields">
        <SelectField
          label="Label sheet in the printer"
          value={sheet.sheet}
          options={sheets.map((each) => ({ value: each.sheet, label: each.name }))}
          onChange={using.pick}
        />
        <SelectField
          label="The label says"
          value={using.says}
          options={[
            { value: 'what-fits', label: 'as much as fits' },
            { value: 'number-only', label: 'the number alone, for jars and shelves' },
          ]}
          onChange={using.say}
        />
        <TextField
          label="Printer"
          value={using.printer}
          onChange={using.usePrinter}
          hint="any name, for its own shift"
        />
        <Shift right={right} down={down} onChange={using.type} />
        <CheckField
          label="Marks to cut along"
          step="cropMarks"
          checked={using.cropMarks}
          onChange={using.mark}
        />
        <p className="soft">
          Try plain paper first and hold it against the sheet. If the print stands beside the labels, move it.
        </p>
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
  const field = (label: string, name: 'right' | 'down', value: string) => (
    <TextField
      label={label}
      value={value}
      onChange={(typed) => onChange({ [name]: typed })}
      problem={millimetres(value) === null ? 'Type millimetres from -10 to 10.' : undefined}
    />
  )
  return (
    <div className="pair">
      {field('Move right, mm', 'right', right)}
      {field('Move down, mm', 'down', down)}
    </div>
  )
}
