import { useAmountReading } from '../../shared/table-form/use-amount-reading.ts'
import type { VisitLines } from '../../shared/table-form/visit-lines.ts'
import type { OutLine } from './out-line.ts'

interface OutListProps {
  readonly lines: VisitLines<OutLine>
  readonly onChangeLine: (id: string) => void
  readonly onTakeOff: (id: string) => void
  readonly onPutBack: () => void
}

/** The packets of this visit so far. */
export function OutList({ lines, onChangeLine, onTakeOff, onPutBack }: OutListProps) {
  return (
    <>
      {lines.listed.length === 0 && (
        <p className="soft">The packets of this visit gather here. Enter after the amount lists one.</p>
      )}
      <ol className="envelopes">
        {lines.listed.map((line) => (
          <li key={line.id} className="envelope" data-changing={lines.changing === line.id}>
            <p className="envelope-name">{line.lot?.variety}</p>
            <LineInWords line={line} />
            <p className="envelope-doing">
              {lines.changing === line.id ? (
                <span className="soft">being changed</span>
              ) : (
                <button type="button" className="word-button" onClick={() => onChangeLine(line.id)}>
                  change<span className="only-aloud"> {line.text}</span>
                </button>
              )}
              <button type="button" className="word-button" onClick={() => onTakeOff(line.id)}>
                take off<span className="only-aloud"> {line.text}</span>
              </button>
            </p>
          </li>
        ))}
      </ol>
      {lines.takenOff && (
        <p className="taken-off">
          {lines.takenOff.line.text || 'A packet'} was taken off.{' '}
          <button type="button" className="word-button" onClick={onPutBack}>
            put it back
          </button>
        </p>
      )}
    </>
  )
}

function LineInWords({ line }: { readonly line: OutLine }) {
  const { reading } = useAmountReading({
    text: line.amount,
    sample: '',
    cropId: undefined,
    lotId: line.lot?.lotId,
  })
  return (
    <p>
      {line.lot?.lotNumber} · {reading?.words || line.amount}
    </p>
  )
}
