import { useTable } from '@tanstack/react-table'
import { useVirtualizer } from '@tanstack/react-virtual'
import { type MouseEvent, type RefObject, useMemo, useRef, useState } from 'react'
import { type Message, message } from '../../../db/messages/message.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import { type Filters, queryOf } from './filters.ts'
import type { ShownColumns } from './shelf-columns.tsx'
import { SORTS_OF_COLUMN, shelfColumns, shelfFeatures } from './shelf-columns.tsx'
import { ShelfRowView } from './shelf-row-view.tsx'
import { useRowKeys } from './use-row-keys.ts'
import { pagesAround, type ShelfRows, type Span, useShelfRows } from './use-shelf-rows.ts'
import { MOST_TICKED, type Ticks } from './use-ticks.ts'

interface ShelfListProps {
  readonly rows: ShelfRows
  readonly onRange: (range: Span) => void
  readonly filters: Filters
  readonly onFilter: (part: Partial<Filters>) => void
  readonly columns: ShownColumns
  readonly ticks: Ticks
  readonly chosen: number | null
  readonly onChoose: (lotId: number, how: 'arrow' | 'click') => void
  readonly onEnter: () => void
}

/** Pixels, before a row is measured. One function for good: a new one would have every row recomputed. */
const rowHeight = () => 58
const FIRST_PAGES = pagesAround({ first: 0, last: 30 })

/** Rows of the shelf for some filters, and what to tell it of the part in view. */
export function useListedRows(filters: Filters): { rows: ShelfRows; onRange: (range: Span) => void } {
  const [pages, setPages] = useState(FIRST_PAGES)
  const query = useMemo(() => queryOf(filters), [filters])
  return {
    rows: useShelfRows(query, pages),
    onRange: (range) => {
      const next = pagesAround(range)
      // The same pages again draw nothing again.
      setPages((now) => (now.first === next.first && now.last === next.last ? now : next))
    },
  }
}

/** The shelf as a list: only the rows in view are drawn. Arrows choose, Space ticks, Enter goes to the record. */
export function ShelfList(props: ShelfListProps) {
  const { t } = useTexts()
  const { rows, filters, columns: shown, chosen, ticks } = props
  const query = useMemo(() => queryOf(filters), [filters])
  const scroller = useRef<HTMLDivElement>(null)
  const format = useFormat()
  const columns = useMemo(() => shelfColumns(format, t), [format, t])
  const data = useMemo(() => [...rows.at.values()], [rows.at])
  const table = useTable({
    features: shelfFeatures,
    columns,
    data,
    getRowId: (row) => String(row.lotId),
    state: { columnVisibility: shown },
  })
  const virtual = useShelfVirtualizer(props, scroller)
  const keys = useRowKeys({
    ...props,
    onTick: ticks.turn,
    onTickFound: () => void ticks.tickFound(query),
    scrollTo: (index) => virtual.scrollToIndex(index, { align: 'auto' }),
  })
  const items = virtual.getVirtualItems()
  const above = items[0]?.start ?? 0
  const below = virtual.getTotalSize() - (items.at(-1)?.end ?? 0)
  return (
    <div ref={scroller} className="shelf-scroller" data-stale={rows.stale}>
      <table
        className="shelf-table"
        // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table that arrows move through is a grid (ARIA APG)
        role="grid"
        aria-label={t('shelf.the-shelf')}
        aria-rowcount={(rows.total ?? 0) + 1}
        aria-activedescendant={
          chosen !== null && rowInView(items, rows, chosen) ? `lot-${chosen}` : undefined
        }
        tabIndex={0}
        onKeyDown={keys}
      >
        <thead>
          <tr>
            <TickAll rows={rows} ticks={ticks} onTickFound={() => void ticks.tickFound(query)} />
            {table.getVisibleLeafColumns().map((column) => (
              <ShelfHeading
                key={column.id}
                columnId={column.id}
                filters={filters}
                onChange={props.onFilter}
              />
            ))}
          </tr>
        </thead>
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: the grid hears the keys; its rows are its active descendants */}
        <tbody onClick={(event) => onRowClicked(event, props)}>
          <Gap height={above} />
          {items.map((item) => {
            const lotId = rows.at.get(item.index)?.lotId
            return (
              <ShelfRowView
                key={item.key}
                row={lotId === undefined ? undefined : table.getRow(String(lotId))}
                index={item.index}
                chosen={lotId !== undefined && lotId === chosen}
                columns={shown}
                ticked={lotId !== undefined && ticks.has(lotId)}
                measure={virtual.measureElement}
              />
            )
          })}
          <Gap height={below} />
        </tbody>
      </table>
    </div>
  )
}

function useShelfVirtualizer({ rows, onRange }: ShelfListProps, scroller: RefObject<HTMLDivElement | null>) {
  return useVirtualizer({
    count: rows.total ?? 0,
    getScrollElement: () => scroller.current,
    estimateSize: rowHeight,
    overscan: 12,
    onChange: ({ range }) => {
      if (range !== null) onRange({ first: range.startIndex, last: range.endIndex })
    },
  })
}

function onRowClicked(event: MouseEvent, { onChoose, ticks }: ShelfListProps): void {
  if (!(event.target instanceof Element)) return
  const lotId = /^lot-(\d+)$/.exec(event.target.closest('tr')?.id ?? '')?.[1]
  if (lotId === undefined) return
  if (event.target.closest('.shelf-tick-cell') !== null) ticks.turn(Number(lotId))
  else onChoose(Number(lotId), 'click')
}

function rowInView(items: readonly { readonly index: number }[], rows: ShelfRows, lotId: number): boolean {
  return items.some((item) => rows.at.get(item.index)?.lotId === lotId)
}

/** Holds the place of the rows above or below that are not drawn. */
function Gap({ height }: { readonly height: number }) {
  if (height <= 0) return null
  // biome-ignore lint/a11y/noAriaHiddenOnFocusable: an empty row takes no focus
  return <tr aria-hidden="true" className="shelf-gap" style={{ height }} />
}

interface TickAllProps {
  readonly rows: ShelfRows
  readonly ticks: Ticks
  readonly onTickFound: () => void
}

/** The heading over the ticks: ticks all that the list holds, or none. */
function TickAll({ rows, ticks, onTickFound }: TickAllProps) {
  const { t } = useTexts()
  const shown = [...rows.at.values()]
  const all = shown.length > 0 && shown.every(({ lotId }) => ticks.has(lotId))
  const found = rows.total ?? 0
  return (
    <th scope="col" className="shelf-tick-cell">
      <input
        type="checkbox"
        aria-label={found > MOST_TICKED ? t('shelf.tick-first', { lots: MOST_TICKED }) : t('shelf.tick-all')}
        checked={all}
        onChange={all ? ticks.untickAll : onTickFound}
      />
    </th>
  )
}

const PLAIN_HEADINGS: Readonly<Record<string, Message>> = {
  living: message('shelf.living-of-keep'),
  donor: message('shelf.donor'),
}

interface ShelfHeadingProps {
  readonly columnId: string
  readonly filters: Filters
  readonly onChange: (part: Partial<Filters>) => void
}

/** The heading of a column: each of its words sorts the shelf, once up and once down. */
function ShelfHeading({ columnId, filters, onChange }: ShelfHeadingProps) {
  const { say } = useTexts()
  const sorts = SORTS_OF_COLUMN[columnId] ?? []
  const plain = PLAIN_HEADINGS[columnId]
  const mine = sorts.some(([sort]) => sort === filters.sort)
  const direction = filters.descending ? ('descending' as const) : ('ascending' as const)
  return (
    <th scope="col" className={`shelf-${columnId}`} {...(mine ? { 'aria-sort': direction } : {})}>
      {plain !== undefined && say(plain)}
      {sorts.map(([sort, word]) => {
        const sorted = filters.sort === sort
        return (
          <button
            key={sort}
            type="button"
            className="shelf-sort"
            aria-pressed={sorted}
            onClick={() => onChange({ sort, descending: sorted && !filters.descending })}
          >
            {say(word)}
            <span aria-hidden="true">{sorted ? (filters.descending ? ' ↓' : ' ↑') : ''}</span>
          </button>
        )
      })}
    </th>
  )
}
