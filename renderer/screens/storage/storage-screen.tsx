import { useEffect, useMemo, useRef } from 'react'
import { Link, useLocation } from 'wouter'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { SheetToPrint } from '../../shared/labels/sheet-to-print.tsx'
import { PaneRows } from '../../shared/panes/pane-rows.tsx'
import { useOpening } from '../../shared/panes/use-opening.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { ComparePlaces } from './compare-places.tsx'
import { KeptElsewhere } from './kept-elsewhere.tsx'
import { PlaceCard } from './place-card.tsx'
import { NewPlace } from './place-forms.tsx'
import { COMPARE, ELSEWHERE, NEW_PLACE, placeAddress, placeRow, ROUND } from './place-row.tsx'
import { RoundCard } from './round-card.tsx'
import './storage.css'

interface StorageScreenProps {
  /** 'place', 'new', 'compare', 'elsewhere', 'round', 'round-sheet' or nothing. */
  readonly part?: string
  /** The place that is shown. */
  readonly id?: number
}

/** The storage places: how each stands on the left, the climate and the lots of one on the right. */
export function StorageScreen({ part = '', id = 0 }: StorageScreenProps) {
  const list = useRead('storage.list', {})
  const toWalk = useRead('round.list-due', {}).data?.toWalk ?? 0
  const away = useRead('duplicate.list', {}).data
  const [, go] = useLocation()
  const right = useRef<HTMLElement>(null)
  const openCard = useOpening(right)
  const { t } = useTexts()
  // There may be hundreds of places: each step through them draws only the rows that changed.
  const rows = useMemo(() => (list.data?.places ?? []).map((place) => placeRow(place, t)), [list.data, t])
  const first = list.data?.places.find(({ latest }) => latest !== null) ?? list.data?.places[0]
  useEffect(() => {
    if (part === '' && first !== undefined) go(placeAddress(first.placeId), { replace: true })
  }, [part, first, go])
  if (list.error !== null) return <ProblemText problem={list.error.problem} />
  if (list.data === undefined) return <p className="soft waiting">{t('storage.opening')}</p>
  const { places } = list.data
  return (
    <div className="panes store">
      <section className="panes-list" aria-label={t('storage.places')}>
        <div className="head-row">
          <h1>{t('storage.title')}</h1>
          <span className="row">
            {places.length > 0 && (
              <Link href={ROUND}>
                {toWalk === 0 ? t('storage.round') : t('storage.round-due', { places: toWalk })}
              </Link>
            )}
            {away !== undefined && away.duplicates.length > 0 && (
              <Link href={ELSEWHERE}>{t('elsewhere.link', { due: away.due })}</Link>
            )}
            {places.length > 1 && <Link href={COMPARE}>{t('storage.compare-places')}</Link>}
            <Link href={NEW_PLACE}>{t('storage.add-place')}</Link>
          </span>
        </div>
        {places.length === 0 && <p className="soft">{t('storage.no-place-yet')}</p>}
        <PaneRows label={t('storage.storage-places')} rows={rows} rowClass="store-row" onOpen={openCard} />
      </section>
      <section className="panes-card" aria-label={t('storage.place')} ref={right}>
        {part === 'place' && <PlaceCard key={id} placeId={id} />}
        {part === 'new' && (
          <NewPlace
            places={places}
            onClose={() => go('/storage')}
            onMade={(placeId) => {
              go(placeAddress(placeId))
              openCard(placeAddress(placeId))
            }}
          />
        )}
        {part === 'compare' && <ComparePlaces places={places} />}
        {part === 'elsewhere' && <KeptElsewhere />}
        {part === 'round' && <RoundCard />}
        {part === 'round-sheet' && <RoundSheet />}
      </section>
    </div>
  )
}

/** The sheet for a round: every place with what to look at, to be ticked on paper. */
function RoundSheet() {
  const { t } = useTexts()
  return (
    <SheetToPrint
      className="stack-3"
      title={t('storage.round-sheet')}
      purpose={t('storage.round-sheet-purpose')}
      name={t('storage.the-round-sheet')}
      sheet={useRead('round.print', {})}
    />
  )
}
