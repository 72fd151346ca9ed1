import { useTexts } from '../format/use-texts.ts'
import './labels.css'

interface SheetPictureProps {
  readonly columns: number
  readonly rows: number
  readonly startAt: number
  /** How many labels will be printed. */
  readonly labels: number
  readonly onStartAt: (label: number) => void
}

/** A small picture of the label sheet: the keeper points at the first label that is still there. */
export function SheetPicture({ columns, rows, startAt, labels, onStartAt }: SheetPictureProps) {
  const { t } = useTexts()
  const all = Array.from({ length: columns * rows }, (_, i) => i + 1)
  return (
    <fieldset className="sheet-picture">
      <legend>{t('labels.first-free', { label: startAt })}</legend>
      <div className="sheet-labels" style={{ gridTemplateColumns: '1fr '.repeat(columns) }}>
        {all.map((label) => {
          const filled = label >= startAt && label < startAt + labels
          return (
            <label key={label} className="sheet-label" data-filled={filled}>
              <input
                type="radio"
                name="first-free-label"
                value={label}
                checked={label === startAt}
                onChange={() => onStartAt(label)}
              />
              <span className="only-aloud">
                {t(filled ? 'labels.label-filled' : 'labels.label', {
                  label,
                  row: Math.ceil(label / columns),
                })}
              </span>
            </label>
          )
        })}
      </div>
    </fieldset>
  )
}
