import { useState } from 'react'
import { Link } from 'wouter'
import type { PlaceClimate } from '../../../db/contract/storage-operations.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { focusAlong, UP_AND_DOWN } from '../../shared/focus/focus-along.ts'
import { MovingThem } from './moving-them.tsx'

/** A caution that so many lots share is said once. */
const SHARED_BY = 4

/** The lots that lie at a place, with what is wrong for them there. */
export function LotsThere({ climate: { lots, place } }: { readonly climate: PlaceClimate }) {
  // The keyboard passes through a long list in one step, and goes along it by arrows.
  const [stop, setStop] = useState(0)
  const said = [...new Set(lots.map(({ caution }) => caution))]
  const shared = said
    .map((caution) => ({ caution, of: lots.filter((lot) => lot.caution === caution).length }))
    .filter(({ caution, of }) => caution !== '' && of >= SHARED_BY)
  const isShared = (caution: string) => shared.some((one) => one.caution === caution)
  return (
    <section className="pane-part" aria-label="Lots there">
      <h3>Lots there</h3>
      {lots.length === 0 && <p className="soft">No lot with seed lies there.</p>}
      {place.lots > lots.length && (
        <p className="soft">
          The first {lots.length} of {place.lots}.
        </p>
      )}
      {shared.map(({ caution, of }) => (
        <p key={caution} className="caution">
          {of === lots.length ? `All ${lots.length}` : `${of} of the ${lots.length}, marked below`}: {caution}
        </p>
      ))}
      {lots.length > 0 && <MovingThem placeId={place.placeId} />}
      <ul className="ruled" onKeyDown={(event) => focusAlong(event, UP_AND_DOWN)}>
        {lots.map(({ lotId, lotNumber, variety, crop, caution }, index) => (
          <li key={lotId}>
            <Link
              href={lotAddress(lotId)}
              tabIndex={index === Math.min(stop, lots.length - 1) ? 0 : -1}
              onFocus={() => setStop(index)}
            >
              {lotNumber}
            </Link>{' '}
            {variety} <span className="soft">{crop}</span>
            {isShared(caution) && said.length > 1 && <span className="caution"> see above</span>}
            {caution !== '' && !isShared(caution) && <p className="caution">{caution}</p>}
          </li>
        ))}
      </ul>
    </section>
  )
}
