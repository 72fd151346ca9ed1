import { message } from '../../../db/messages/message.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
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
  const { t } = useTexts()
  return (
    <LineCard lines={packets.lines} noun="Packet" onList={work.listLine}>
      <LotField
        line={line}
        onChange={packets.setLine}
        nothingFound={(typed) => message('hand-out.no-lot', { typed })}
        problem={problems.lot ?? (refused?.field?.endsWith('.lotId') ? refused.sentence : undefined)}
        words={line.lot && <LotStock lot={line.lot} barElsewhere={ofLine?.left != null} />}
        spoken={line.lot === null ? '' : `${line.text}. ${line.lot.why}`}
      />
      <AmountField
        label={t('hand-out.amount')}
        step="amount"
        size="table"
        value={line.amount}
        onChange={(amount) => packets.setLine({ amount })}
        lotId={line.lot?.lotId}
        problem={problems.amount ?? (refused?.field?.endsWith('.amount') ? refused.sentence : undefined)}
        offered={previewed.fresh && refused ? refused.choices : []}
        placeholder={t('hand-out.amount-like')}
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
            label={t('hand-out.reason')}
            step={previewed.fresh ? 'reason' : undefined}
            value={table.draft.reason}
            onChange={(reason) => table.set({ reason })}
            hint={t('hand-out.reason-hint')}
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
  const { t } = useTexts()
  if (!record) return null
  const { crop, harvest, quantity, place } = record
  return (
    <>
      <p>
        {t('hand-out.holds', { crop, harvest, amount: quantity.words })}
        {place === '' ? '' : ` · ${place}`}
      </p>
      {lot.why && <p className="soft">{lot.why}</p>}
      {!barElsewhere && <SeedBar {...record.stock} large />}
    </>
  )
}

/** What a line would leave: in the lot, and of its accession as its seed bar will then stand. */
function AfterOut({ previewed }: { readonly previewed: Previewed }) {
  const { left, stock, cautions } = previewed
  const { t } = useTexts()
  if (left === null) return null
  const saidBelow = cautions.some(({ despite }) => despite === 'too-few-left')
  return (
    <div className="stack-1">
      <p className="row">
        {t('hand-out.leaves', { amount: left.words })} <StateMark mark={stock.state} />
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
  const { t } = useTexts()
  const cautioned = (previewed?.cautions.length ?? 0) > 0
  const remarks = [
    ...(cautioned ? [t(reason.trim() === '' ? 'hand-out.needs-reason' : 'hand-out.has-reason')] : []),
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
