import { useRead } from '../../shared/client/use-read.ts'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import type { PickedLot } from './out-line.ts'
import type { Foreseen } from './use-foreseen.ts'

/** What a picked lot holds, why it is offered, and how its accession stands. */
export function LotStock({ lot }: { readonly lot: PickedLot }) {
  const record = useRead('lot.get', { lotId: lot.lotId }).data
  if (!record) return null
  return (
    <div className="lot-stock">
      <p>
        {record.crop} · {record.harvest} · holds {record.quantity.words}
        {record.place === '' ? '' : ` · ${record.place}`}
      </p>
      {lot.why !== '' && <p className="soft">{lot.why}</p>}
      <SeedBar {...record.stock} large />
    </div>
  )
}

/** What a line would leave, in the lot and of its accession. */
export function AfterOut({ foreseen }: { readonly foreseen: Foreseen }) {
  if (foreseen.left === null) return null
  const saysWhatIsLeft = foreseen.cautions.some(({ despite }) => despite === 'too-few-left')
  return (
    <div className="after-out">
      <p className="after-out-left">
        Leaves {foreseen.left.words} {foreseen.state && <StateMark mark={foreseen.state} />}
      </p>
      {!saysWhatIsLeft && <p className="table-field-note">{foreseen.sentence}</p>}
    </div>
  )
}
