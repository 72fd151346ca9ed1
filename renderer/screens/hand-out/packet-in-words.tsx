import { useAmountReading } from '../../shared/table-form/use-amount-reading.ts'
import type { OutLine } from './out-line.ts'
import type { Previewed } from './use-preview.ts'

interface PacketInWordsProps {
  readonly line: OutLine
  readonly previewed: Previewed | undefined
  /** Why something goes out in spite of a caution; '' while nobody said. */
  readonly reason: string
}

/** A listed packet on its envelope: its lot, how much, and what needs a reason or would be refused. */
export function PacketInWords({ line, previewed, reason }: PacketInWordsProps) {
  const { reading } = useAmountReading({
    text: line.amount,
    sample: '',
    cropId: undefined,
    lotId: line.lot?.lotId,
  })
  const cautioned = (previewed?.cautions.length ?? 0) > 0
  const remarks = [
    ...(cautioned ? [reason.trim() === '' ? 'needs a reason' : 'goes out with the reason given'] : []),
    ...(previewed?.problem ? [previewed.problem.sentence] : []),
  ]
  return (
    <>
      <p>
        {line.lot?.lotNumber} · {reading?.words || line.amount}
      </p>
      {remarks.map((sentence) => (
        <p key={sentence} className="table-field-warning">
          {sentence}
        </p>
      ))}
    </>
  )
}
