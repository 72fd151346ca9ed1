import { useTable } from '@tanstack/react-table'
import { useVirtualizer } from '@tanstack/react-virtual'
import { type MouseEvent, type RefObject, useMemo, useRef, useState } from 'react'
import { useFormat } from '../../shared/format/use-format.ts'
import { type Filters, queryOf } from './filters.ts'
import { shelfColumns, shelfFeatures } from './shelf-columns.tsx'
import { ShelfHeading } from './shelf-heading.tsx'
import { ShelfRowView } from './shelf-row-view.tsx'
import { TickAll } from './tick-all.tsx'
import type { ShownColumns } from './use-extra-columns.ts'
import { useRowKeys } from './use-row-keys.ts'
import { pagesAround, type RowRange, type ShelfRows, useShelfRows } from './use-shelf-rows.ts'
import type { Ticks } from './use-ticks.ts'

interface ShelfListProps {
  readonly rows: ShelfRows
  readonly onRange: (range: RowRange) => void
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
export function useListedRows(filters: Filters): { rows: ShelfRows; onRange: (range: RowRange) => void } {
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
  const { rows, filters, columns: shown, chosen, ticks } = props
  const query = useMemo(() => queryOf(filters), [filters])
  const scroller = useRef<HTMLDivElement>(null)
  const format = useFormat()
  const columns = useMemo(() => shelfColumns(format), [format])
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
        aria-label="The shelf"
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
