import { useRead } from '../../shared/client/use-read.ts'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import type { PickedLot } from './out-line.ts'
import type { Previewed } from './use-preview.ts'

interface LotStockProps {
  readonly lot: PickedLot
  /** Whether the bar is drawn elsewhere, as it will be. */
  readonly barElsewhere: boolean
}

/** What a picked lot holds, why it is offered, and how its accession stands. */
export function LotStock({ lot, barElsewhere }: LotStockProps) {
  const record = useRead('lot.get', { lotId: lot.lotId }).data
  if (!record) return null
  return (
    <>
      <p>
        {record.crop} · {record.harvest} · holds {record.quantity.words}
        {record.place === '' ? '' : ` · ${record.place}`}
      </p>
      {lot.why !== '' && <p className="soft">{lot.why}</p>}
      {!barElsewhere && <SeedBar {...record.stock} large />}
    </>
  )
}

/** What a line would leave: in the lot, and of its accession as its seed bar will then stand. */
export function AfterOut({ previewed }: { readonly previewed: Previewed }) {
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
