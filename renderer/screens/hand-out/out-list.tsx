import { useAmountReading } from '../../shared/table-form/use-amount-reading.ts'
import type { VisitLines } from '../../shared/table-form/visit-lines.ts'
import type { OutLine } from './out-line.ts'
import type { Foreseen } from './use-foreseen.ts'

interface OutListProps {
  readonly lines: VisitLines<OutLine>
  readonly foreseen: ReadonlyMap<string, Foreseen>
  readonly onChangeLine: (id: string) => void
  readonly onTakeOff: (id: string) => void
  readonly onPutBack: () => void
}

/** The packets of this visit so far. */
export function OutList({ lines, foreseen, onChangeLine, onTakeOff, onPutBack }: OutListProps) {
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
            <Remarks foreseen={foreseen.get(line.id)} />
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

/** What needs a reason, or would be refused, when the visit is saved. */
function Remarks({ foreseen }: { readonly foreseen: Foreseen | undefined }) {
  const sentences = [
    ...(foreseen?.cautions.map(({ sentence }) => sentence) ?? []),
    ...(foreseen?.problem ? [foreseen.problem.sentence] : []),
  ]
  return sentences.map((sentence) => (
    <p key={sentence} className="table-field-warning">
      {sentence}
    </p>
  ))
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
