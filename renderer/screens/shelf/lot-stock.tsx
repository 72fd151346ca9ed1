import type { LotRecord } from '../../../db/contract/shelf-operations.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { capital } from '../../shared/format/words.ts'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'

/** How the accession stands: the bar, the sentence, the reasons, and the arithmetic line by line. */
export function LotStock({ lot }: { readonly lot: LotRecord }) {
  const { stock } = lot
  const format = useFormat()
  return (
    <section className="pane-part" aria-label="How it stands">
      <div className="head-row">
        <p className="strong">{capital(stock.sentence)}</p>
        <StateMark mark={stock.state} />
      </div>
      <SeedBar
        large
        state={stock.state}
        living={stock.living}
        total={stock.total}
        keep={stock.keep}
        low={stock.low}
        high={stock.high}
        sentence={stock.sentence}
      />
      {stock.reasons.map((reason) => (
        <p key={reason}>{reason}</p>
      ))}
      <details className="more">
        <summary>How this is worked out</summary>
        <ul className="ruled">
          {stock.arithmetic.map((line) => (
            <li key={line}>{line}</li>
          ))}
          <li>{stock.viabilityNote}</li>
          <li>
            in this lot: {lot.quantity.words}, about {format.number(lot.lotLiving)} of them living
          </li>
        </ul>
      </details>
    </section>
  )
}
