import { FlexRender, type Row } from '@tanstack/react-table'
import { memo } from 'react'
import type { ShelfRow } from '../../../db/contract/stock-operations.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
import type { ShownColumns, shelfFeatures } from './shelf-columns.tsx'

interface ShelfRowViewProps {
  /** Undefined while it is on its way. */
  readonly row: Row<typeof shelfFeatures, ShelfRow> | undefined
  readonly index: number
  readonly chosen: boolean
  /** Read by the row itself; here so that it is drawn anew when the keeper shows or hides one. */
  readonly columns: ShownColumns
  readonly ticked: boolean
  readonly measure: (row: HTMLTableRowElement | null) => void
}

/** One row of the shelf, drawn anew only when it changed: scrolling draws the rows that come, and no others. */
export const ShelfRowView = memo(function ShelfRowView({
  row,
  index,
  chosen,
  ticked,
  measure,
}: ShelfRowViewProps) {
  const { t } = useTexts()
  return (
    <tr
      ref={measure}
      data-index={index}
      className="shelf-row"
      aria-rowindex={index + 2}
      aria-selected={chosen}
      {...(row === undefined ? {} : { id: `lot-${row.original.lotId}` })}
    >
      {row === undefined ? (
        <td className="shelf-waiting" colSpan={8}>
          …
        </td>
      ) : (
        <>
          <td className="shelf-tick-cell">
            {/* The grid hears Space for the marked row, and the click for the whole cell. */}
            <input
              type="checkbox"
              tabIndex={-1}
              aria-label={t('shelf.tick', { lot: row.original.lotNumber })}
              checked={ticked}
              readOnly
            />
          </td>
          {row.getVisibleCells().map((cell) => (
            <td key={cell.id} className={`shelf-${cell.column.id}`}>
              <FlexRender cell={cell} />
            </td>
          ))}
        </>
      )}
    </tr>
  )
})
