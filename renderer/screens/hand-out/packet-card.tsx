import { useRead } from '../../shared/client/use-read.ts'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { TextField } from '../../shared/table-form/fields.tsx'
import { LotField } from '../../shared/table-form/lot-field.tsx'
import type { LotLine, PickedLot } from '../../shared/table-form/lot-line.ts'
import { LineCard } from '../../shared/table-form/table-frame.tsx'
import { useAmountReading } from '../../shared/table-form/use-amount-reading.ts'
import type { useHandOut } from './use-hand-out.ts'
import type { Previewed } from './use-preview.ts'

/** One lot and how much of it goes out, with what would remain. */
export function PacketCard({ work }: { readonly work: ReturnType<typeof useHandOut> }) {
  const { table, packets, previewed } = work
  const { line } = packets.lines
  const { problems } = table.shown
  const ofLine = previewed.ofLine.get(line.id)
  const cautions = [...(ofLine?.cautions ?? []), ...previewed.cautions]
  const refused = ofLine?.problem
  return (
    <LineCard lines={packets.lines} noun="Packet" onList={work.listLine}>
      <LotField
        line={line}
        onChange={packets.setLine}
        nothingFound={(text) =>
          `No lot to hand out fits ${text}. What is empty, in quarantine or kept in reserve is not offered.`
        }
        problem={problems.lot ?? (refused?.field?.endsWith('.lotId') ? refused.sentence : undefined)}
        words={line.lot && <LotStock lot={line.lot} barElsewhere={ofLine?.left != null} />}
        spoken={line.lot === null ? '' : `${line.text}. ${line.lot.why}`}
      />
      <AmountField
        label="Amount"
        step="amount"
        size="table"
        value={line.amount}
        onChange={(amount) => packets.setLine({ amount })}
        lotId={line.lot?.lotId}
        problem={problems.amount ?? (refused?.field?.endsWith('.amount') ? refused.sentence : undefined)}
        offered={previewed.fresh && refused ? refused.choices : []}
        placeholder="1 packet of 25, 12.5 g, 30 seeds"
        after={ofLine && <AfterOut previewed={ofLine} />}
      />
      {cautions.length > 0 && (
        <>
          {cautions.map(({ despite, sentence }) => (
            <p key={despite} className="table-field-warning">
              {sentence}
            </p>
          ))}
          <TextField
            label="Why all the same?"
            step={previewed.fresh ? 'reason' : undefined}
            value={table.draft.reason}
            onChange={(reason) => table.set({ reason })}
            hint="The reason is kept in the book. Esc steps back to give less."
            problem={problems.reason}
          />
        </>
      )}
    </LineCard>
  )
}

interface LotStockProps {
  readonly lot: PickedLot
  /** Whether the bar is drawn elsewhere, as it will be. */
  readonly barElsewhere: boolean
}

/** What a picked lot holds, why it is offered, and how its accession stands. */
function LotStock({ lot, barElsewhere }: LotStockProps) {
  const record = useRead('lot.get', { lotId: lot.lotId }).data
  if (!record) return null
  return (
    <>
      <p>
        {record.crop} · {record.harvest} · holds {record.quantity.words}
        {record.place === '' ? '' : ` · ${record.place}`}
      </p>
      {lot.why && <p className="soft">{lot.why}</p>}
      {!barElsewhere && <SeedBar {...record.stock} large />}
    </>
  )
}

/** What a line would leave: in the lot, and of its accession as its seed bar will then stand. */
function AfterOut({ previewed }: { readonly previewed: Previewed }) {
  const { left, stock, cautions } = previewed
  if (left === null) return null
  const saidBelow = cautions.some(({ despite }) => despite === 'too-few-left')
  return (
    <div className="stack-1">
      <p className="row">
        Leaves {left.words} <StateMark mark={stock.state} />
      </p>
      <SeedBar {...stock} large />
      {!saidBelow && <p className="soft">{stock.sentence}</p>}
    </div>
  )
}

interface PacketInWordsProps {
  readonly line: LotLine
  readonly previewed: Previewed | undefined
  /** Why something goes out in spite of a caution; '' while nobody said. */
  readonly reason: string
}

/** A listed packet on its envelope: its lot, how much, and what needs a reason or would be refused. */
export function PacketInWords({ line, previewed, reason }: PacketInWordsProps) {
  const { reading } = useAmountReading({ text: line.amount, lotId: line.lot?.lotId })
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
