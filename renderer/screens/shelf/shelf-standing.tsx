import { Link } from 'wouter'
import { NEED_STATES, type NeedState } from '../../../db/domain/needs/need.ts'
import { findAddress } from '../../shared/addresses.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { capital } from '../../shared/format/words.ts'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'

const WORST = 6

/** Lies where the card will lie, while none is chosen: how the whole shelf stands, and what is worst off. */
export function ShelfStanding({ onState }: { readonly onState: (state: NeedState) => void }) {
  const { t } = useTexts()
  const needs = useRead('accession.list-states', { limit: WORST }).data
  const format = useFormat()
  if (needs === undefined || needs.total === 0) return null
  return (
    <section className="standing stack-4" aria-labelledby="standing">
      <h2 id="standing">{t('shelf.standing')}</h2>
      <ul className="standing-states">
        {NEED_STATES.map((state) => (
          <li key={state}>
            <button type="button" className="standing-state" onClick={() => onState(state)}>
              <span className="standing-count">{format.number(needs.counts[state])}</span>
              <StateMark mark={state} />
            </button>
          </li>
        ))}
      </ul>
      <h3 className="soft">{t('shelf.worst-off')}</h3>
      <ul className="standing-worst ruled">
        {needs.accessions.map(({ accessionId, accessionNumber, variety, stock }) => (
          <li key={accessionId}>
            <p>
              <Link href={findAddress(accessionNumber)}>{variety}</Link>{' '}
              <span className="soft">{accessionNumber}</span>
            </p>
            <SeedBar {...stock} />
            <p className="soft">{capital(stock.sentence)}.</p>
          </li>
        ))}
      </ul>
      <p className="soft">{t('shelf.choose-lot')}</p>
    </section>
  )
}
