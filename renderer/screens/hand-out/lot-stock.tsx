import { useQueries } from '@tanstack/react-query'
import { call } from '../../shared/client/call.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import { useAmountReading } from '../../shared/table-form/use-amount-reading.ts'
import type { OutLine, PickedLot } from './out-line.ts'
import { whatRemains } from './what-remains.ts'

/** What a picked lot holds, how its accession stands, and why it is offered. */
export function LotStock({ lot }: { readonly lot: PickedLot }) {
  const record = useRead('lot.get', { lotId: lot.lotId }).data
  if (!record) return null
  return (
    <div className="lot-stock">
      <p>
        {record.crop} · {record.harvest} · holds {record.quantity.words}
        {record.place === '' ? '' : ` · ${record.place}`}
      </p>
      <p className="soft">{lot.why}</p>
    </div>
  )
}

interface AfterOutProps {
  readonly line: OutLine
  readonly lot: PickedLot
  /** Other lines of the visit that take from the same lot. */
  readonly others: readonly OutLine[]
}

/** How the accession stands, and what would remain of it after this line and the others of its lot. */
export function AfterOut({ line, lot, others }: AfterOutProps) {
  const record = useRead('lot.get', { lotId: lot.lotId }).data
  const alsoOut = useSeedsOf(lot.lotId, others)
  const { reading } = useAmountReading({ text: line.amount, sample: '', cropId: undefined, lotId: lot.lotId })
  if (!record) return null
  const remains = whatRemains(record, reading?.count ?? 0, alsoOut)
  const short = !remains.enough || remains.belowKeep
  return (
    <div className="after-out">
      <p className={short ? 'table-field-warning' : ''}>{remains.sentence}</p>
      <SeedBar {...remains.stock} sentence={remains.sentence} large />
      <StateMark mark={record.stock.state} />
    </div>
  )
}

/** The seeds that other lines of the visit take from a lot. */
function useSeedsOf(lotId: number, lines: readonly OutLine[]): number {
  const ofLot = lines.filter((line) => line.lot?.lotId === lotId)
  return useQueries({
    queries: ofLot.map(({ amount }) => {
      const input = { text: amount, sample: '', lotId }
      return { queryKey: ['amount.read', input], queryFn: () => call('amount.read', input) }
    }),
    combine: (answers) => answers.reduce((sum, { data }) => sum + (data?.count ?? 0), 0),
  })
}
