import { useEffect, useMemo, useRef } from 'react'
import { Link, useLocation } from 'wouter'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { SheetToPrint } from '../../shared/labels/sheet-to-print.tsx'
import { PaneRows } from '../../shared/panes/pane-rows.tsx'
import { useOpening } from '../../shared/panes/use-opening.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { ComparePlaces } from './compare-places.tsx'
import { PlaceCard } from './place-card.tsx'
import { NewPlace } from './place-forms.tsx'
import { COMPARE, NEW_PLACE, placeAddress, placeRow, ROUND } from './place-row.tsx'
import { RoundCard } from './round-card.tsx'
import './storage.css'

interface StorageScreenProps {
  /** 'place', 'new', 'compare', 'round', 'round-sheet' or nothing. */
  readonly part?: string
  /** The place that is shown. */
  readonly id?: number
}

/** The storage places: how each stands on the left, the climate and the lots of one on the right. */
export function StorageScreen({ part = '', id = 0 }: StorageScreenProps) {
  const list = useRead('storage.list', {})
  const toWalk = useRead('round.list-due', {}).data?.toWalk ?? 0
  const [, go] = useLocation()
  const right = useRef<HTMLElement>(null)
  const openCard = useOpening(right)
  const format = useFormat()
  // There may be hundreds of places: each step through them draws only the rows that changed.
  const rows = useMemo(
    () => (list.data?.places ?? []).map((place) => placeRow(place, format)),
    [list.data, format],
  )
  const first = list.data?.places.find(({ latest }) => latest !== null) ?? list.data?.places[0]
  useEffect(() => {
    if (part === '' && first !== undefined) go(placeAddress(first.placeId), { replace: true })
  }, [part, first, go])
  if (list.error !== null) return <ProblemText problem={list.error.problem} />
  if (list.data === undefined) return <p className="soft waiting">Opening…</p>
  const { places } = list.data
  return (
    <div className="panes store">
      <section className="panes-list" aria-label="Places">
        <div className="head-row">
          <h1>Storage</h1>
          {places.length > 0 && <Link href={ROUND}>{toWalk === 0 ? 'Round' : `Round: ${toWalk} due`}</Link>}
          {places.length > 1 && <Link href={COMPARE}>Compare places</Link>}
          <Link href={NEW_PLACE}>Add a place</Link>
        </div>
        {places.length === 0 && (
          <p className="soft">
            There is no storage place yet. Add one here, or where a lot is moved or taken in.
          </p>
        )}
        <PaneRows label="Storage places" rows={rows} rowClass="store-row" onOpen={openCard} />
      </section>
      <section className="panes-card" aria-label="Place" ref={right}>
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
        {part === 'round' && <RoundCard />}
        {part === 'round-sheet' && <RoundSheet />}
      </section>
    </div>
  )
}

/** The sheet for a round: every place with what to look at, to be ticked on paper. */
function RoundSheet() {
  return (
    <SheetToPrint
      className="stack-3"
      title="Round sheet"
      purpose="To tick while you walk, and type in afterwards."
      name="The round sheet"
      sheet={useRead('round.print', {})}
    />
  )
}
