import { useState } from 'react'
import { Link } from 'wouter'
import { lotAddress } from '../../shared/addresses.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { LabelPrint } from '../../shared/labels/label-print.tsx'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'

/** What became of a gift that was taken in: its lot as it stands now, and how often it went out. */
export function Became({ lotId }: { readonly lotId: number }) {
  const lot = useRead('lot.get', { lotId }).data
  const [printing, setPrinting] = useState(false)
  if (lot === undefined) return null
  const out = lot.ledger.filter(({ kind, takenBack }) => kind === 'withdrawal' && !takenBack).length
  return (
    <section className="pane-part" aria-label="What became of it">
      <h3>What became of it</h3>
      <p>
        <Link href={lotAddress(lotId)}>{lot.lotNumber}</Link>
        {lot.place === '' ? '' : ` in ${lot.place}`} holds {lot.quantity.words}.{' '}
        {out === 0 ? 'Nothing of it was handed out yet.' : `It was handed out ${timesInWords(out)}.`}
      </p>
      {lot.quarantined && <StateMark mark="quarantine" />}
      <SeedBar {...lot.stock} large />
      <p>{lot.stock.sentence}</p>
      {printing ? (
        <LabelPrint title="Its label" lotIds={[lotId]} contents="" onClose={() => setPrinting(false)} />
      ) : (
        <p>
          <button type="button" className="quiet-button" onClick={() => setPrinting(true)}>
            Print its label
          </button>
        </p>
      )}
    </section>
  )
}

function timesInWords(times: number): string {
  return times === 1 ? 'once' : `${times} times`
}
