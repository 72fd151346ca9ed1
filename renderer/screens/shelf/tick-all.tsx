import type { ShelfRows } from './use-shelf-rows.ts'
import { MOST_TICKED, type Ticks } from './use-ticks.ts'

interface TickAllProps {
  readonly rows: ShelfRows
  readonly ticks: Ticks
  readonly onTickFound: () => void
}

/** The heading over the ticks: ticks all that the list holds, or none. */
export function TickAll({ rows, ticks, onTickFound }: TickAllProps) {
  const shown = [...rows.at.values()]
  const all = shown.length > 0 && shown.every(({ lotId }) => ticks.has(lotId))
  const found = rows.total ?? 0
  return (
    <th scope="col" className="shelf-tick-cell">
      <input
        type="checkbox"
        aria-label={found > MOST_TICKED ? `tick the first ${MOST_TICKED} lots` : 'tick all lots of this list'}
        checked={all}
        onChange={all ? ticks.untickAll : onTickFound}
      />
    </th>
  )
}
