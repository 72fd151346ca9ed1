import type { Filters } from './filters.ts'
import { SORTS_OF_COLUMN } from './shelf-columns.tsx'

const PLAIN_HEADINGS: Readonly<Record<string, string>> = { living: 'Living, of what to keep', donor: 'Donor' }

interface ShelfHeadingProps {
  readonly columnId: string
  readonly filters: Filters
  readonly onChange: (part: Partial<Filters>) => void
}

/** The heading of a column: each of its words sorts the shelf, once up and once down. */
export function ShelfHeading({ columnId, filters, onChange }: ShelfHeadingProps) {
  const sorts = SORTS_OF_COLUMN[columnId] ?? []
  const mine = sorts.some(([sort]) => sort === filters.sort)
  const direction = filters.descending ? ('descending' as const) : ('ascending' as const)
  return (
    <th scope="col" className={`shelf-${columnId}`} {...(mine ? { 'aria-sort': direction } : {})}>
      {PLAIN_HEADINGS[columnId]}
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
            {word}
            <span aria-hidden="true">{sorted ? (filters.descending ? ' ↓' : ' ↑') : ''}</span>
          </button>
        )
      })}
    </th>
  )
}
