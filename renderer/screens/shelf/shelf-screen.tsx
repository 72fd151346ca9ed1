import { useEffect, useRef, useState } from 'react'
import { Link } from 'wouter'
import { message } from '../../../db/messages/message.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { type Filters, leavesOut, NO_FILTERS } from './filters.ts'
import { LotCard } from './lot-card.tsx'
import './shelf.css'
import './shelf-widths.css'
import { useExtraColumns } from './shelf-columns.tsx'
import { ShelfFilters } from './shelf-filters.tsx'
import { ShelfList, useListedRows } from './shelf-list.tsx'
import { ShelfStanding } from './shelf-standing.tsx'
import { TickedLots } from './ticked-lots.tsx'
import { useChoice } from './use-choice.ts'
import { useTicks } from './use-ticks.ts'

interface ShelfScreenProps {
  /** The lot whose record is open. */
  readonly lotId?: number
  /** Letters to narrow the shelf by, as the one field at the top sends them. */
  readonly find?: string
}

let filtersLastTime: Filters = NO_FILTERS

/** The stock: a list on the left, and on the right the index card of the lot that is chosen. */
export function ShelfScreen({ lotId, find }: ShelfScreenProps) {
  const { t } = useTexts()
  const [filters, setFilters] = useFilters(find)
  const [columns, showColumn] = useExtraColumns()
  const { rows, onRange } = useListedRows(filters)
  const screen = useRef<HTMLDivElement>(null)
  const choice = useChoice(lotId, screen)
  const ticks = useTicks()
  const narrow = (part: Partial<Filters>) => setFilters({ ...filters, ...part })
  const nothing = rows.total === 0
  return (
    <div ref={screen} className="shelf" data-card-open={lotId !== undefined}>
      <section className="shelf-list" aria-label={t('shelf.list')}>
        <h1 className="only-aloud">{t('screen.shelf')}</h1>
        <ShelfFilters
          filters={filters}
          onChange={narrow}
          columns={columns}
          onColumn={showColumn}
          found={rows.total === null ? '' : t('shelf.found', { lots: rows.total })}
        />
        <TickedLots ticks={ticks} />
        {rows.problem !== null && <ProblemText problem={rows.problem.problem} />}
        {nothing ? (
          <NothingHere narrowed={leavesOut(filters)} onShowAll={() => setFilters(NO_FILTERS)} />
        ) : (
          <ShelfList
            rows={rows}
            onRange={onRange}
            filters={filters}
            onFilter={narrow}
            columns={columns}
            ticks={ticks}
            chosen={choice.marked}
            onChoose={choice.choose}
            onEnter={choice.enter}
          />
        )}
      </section>
      <section className="shelf-card" aria-label={t('shelf.record')}>
        {lotId === undefined ? (
          // The list comes first: how the whole shelf stands takes longer to compute.
          rows.total !== null && <ShelfStanding onState={(state) => setFilters({ ...NO_FILTERS, state })} />
        ) : (
          <>
            <Link href="/shelf" className="shelf-back">
              {t('shelf.back')}
            </Link>
            <LotCard lotId={lotId} takesFocus={choice.onePane} entered={choice.entered} />
          </>
        )}
      </section>
    </div>
  )
}

function useFilters(find: string | undefined): [Filters, (filters: Filters) => void] {
  const [filters, setFilters] = useState<Filters>(() =>
    find === undefined ? filtersLastTime : { ...NO_FILTERS, text: find },
  )
  useEffect(() => {
    if (find !== undefined) setFilters({ ...NO_FILTERS, text: find })
  }, [find])
  useEffect(() => {
    filtersLastTime = filters
  }, [filters])
  return [filters, setFilters]
}

function NothingHere({
  narrowed,
  onShowAll,
}: {
  readonly narrowed: boolean
  readonly onShowAll: () => void
}) {
  const { t, pieces } = useTexts()
  if (narrowed) {
    return (
      <div className="shelf-nothing stack-3">
        <p>{t('shelf.none-fits')}</p>
        <button type="button" className="quiet-button" onClick={onShowAll}>
          {t('shelf.show-whole')}
        </button>
      </div>
    )
  }
  return (
    <div className="shelf-nothing stack-3">
      <p>{t('shelf.is-empty')}</p>
      <p>
        {pieces(message('shelf.first-gift'), {
          link: (words) => (
            <Link key="link" href="/take-in">
              {words}
            </Link>
          ),
        })}
      </p>
    </div>
  )
}
