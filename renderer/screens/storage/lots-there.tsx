import { useState } from 'react'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import type { PlaceClimate } from '../../../db/contract/storage-operations.ts'
import { lotAddress } from '../../shared/addresses.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { focusAlong, UP_AND_DOWN } from '../../shared/focus/focus-along.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { RowTable } from '../../shared/parts/row-table.tsx'

/** A caution that so many lots share is said once. */
const SHARED_BY = 4

/** The lots that lie at a place, with what is wrong for them there. */
export function LotsThere({ climate: { lots, place } }: { readonly climate: PlaceClimate }) {
  // The keyboard passes through a long list in one step, and goes along it by arrows.
  const [stop, setStop] = useState(0)
  const { t } = useTexts()
  const said = [...new Set(lots.map(({ caution }) => caution))]
  const shared = said
    .map((caution) => ({ caution, of: lots.filter((lot) => lot.caution === caution).length }))
    .filter(({ caution, of }) => caution !== '' && of >= SHARED_BY)
  const isShared = (caution: string) => shared.some((one) => one.caution === caution)
  return (
    <section className="pane-part" aria-label={t('storage.lots-there')}>
      <h3>{t('storage.lots-there')}</h3>
      {lots.length === 0 && <p className="soft">{t('storage.no-lot-there')}</p>}
      {place.lots > lots.length && (
        <p className="soft">{t('storage.first-lots', { shown: lots.length, lots: place.lots })}</p>
      )}
      {shared.map(({ caution, of }) => (
        <p key={caution} className="caution">
          {of === lots.length
            ? t('storage.caution-of-all', { lots: of, caution })
            : t('storage.caution-of-some', { cautioned: of, lots: lots.length, caution })}
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
            {variety} <span className="soft">{crop}</span>{' '}
            {isShared(caution) && said.length > 1 && (
              <span className="caution">{t('storage.see-above')}</span>
            )}
            {caution !== '' && !isShared(caution) && <p className="caution">{caution}</p>}
          </li>
        ))}
      </ul>
    </section>
  )
}

/** How long the lots of a place keep there, and would keep in each other place; computed once it is opened. */
function MovingThem({ placeId }: { readonly placeId: number }) {
  const [open, setOpen] = useState(false)
  const { t } = useTexts()
  const read = useRead('place.preview-moves', open ? { placeId } : null, { keepLast: true })
  return (
    <details className="more" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{t('storage.would-last-longer')}</summary>
      {read.error !== null && <ProblemText problem={read.error.problem} />}
      {open && read.data === undefined && read.error === null && (
        <p className="soft">{t('storage.working-it-out')}</p>
      )}
      {read.data !== undefined && <Moves moves={read.data} />}
    </details>
  )
}

function Moves({ moves }: { readonly moves: Value<'place.preview-moves'> }) {
  const format = useFormat()
  const { t } = useTexts()
  const { lots, notTold, already, places } = moves
  if (lots === 0) return <p>{t('storage.moves-not-told')}</p>
  return (
    <>
      <p>
        {t('storage.moves-already', { lots, already })}{' '}
        {notTold > 0 && t('storage.moves-more-not-told', { lots: notTold })}
      </p>
      <RowTable
        label={t('storage.moves-table')}
        rowHeads
        rows={places}
        keyOf={({ placeId }) => placeId ?? 'here'}
        columns={[
          [t('storage.place'), ({ place }) => place],
          [
            t('storage.moves-until-half'),
            ({ words, notTold: notThere, caution }) => (
              <>
                {words}{' '}
                {notThere > 0 && (
                  <span className="soft">{t('storage.moves-not-told-there', { lots: notThere })}</span>
                )}
                {caution !== '' && <span className="own-line caution">{caution}</span>}
              </>
            ),
          ],
          [t('storage.moves-soon'), ({ soon }) => format.number(soon), 'number'],
        ]}
      />
    </>
  )
}
