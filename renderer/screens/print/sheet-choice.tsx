import { SheetPicture } from '../../shared/labels/sheet-picture.tsx'
import { CheckField } from '../../shared/table-form/check-field.tsx'
import { SelectField } from '../../shared/table-form/select-field.tsx'
import { TextField } from '../../shared/table-form/text-field.tsx'
import { millimetres, type SheetInUse } from './use-sheet.ts'

const NOT_A_SHIFT = 'Type millimetres from -10 to 10.'

interface SheetChoiceProps {
  readonly using: SheetInUse
  readonly labels: number
}

/** The sheet in the printer, its first free label, and how far this printer prints beside the mark. */
export function SheetChoice({ using, labels }: SheetChoiceProps) {
  const { sheets, sheet, startAt, right, down } = using
  if (sheet === undefined) return null
  const shift = (label: string, value: string, which: 'right' | 'down') => (
    <TextField
      label={label}
      size="record"
      value={value}
      onChange={(typed) => using.type({ [which]: typed })}
      problem={millimetres(value) === null ? NOT_A_SHIFT : undefined}
    />
  )
  return (
    <section className="print-sheet" aria-label="The label sheet">
      <div className="print-sheet-fields fields">
        <SelectField
          label="Label sheet in the printer"
          size="record"
          value={sheet.sheet}
          options={sheets.map((each) => ({ value: each.sheet, label: each.name }))}
          onChange={using.pick}
        />
        <SelectField
          label="The label says"
          size="record"
          value={using.says}
          options={[
            { value: 'what-fits', label: 'as much as fits' },
            { value: 'number-only', label: 'the number alone, for jars and shelves' },
          ]}
          onChange={using.say}
        />
        <TextField
          label="Printer"
          size="record"
          value={using.printer}
          onChange={using.usePrinter}
          hint="any name, for its own shift"
        />
        <div className="pair">
          {shift('Move right, mm', right, 'right')}
          {shift('Move down, mm', down, 'down')}
        </div>
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
