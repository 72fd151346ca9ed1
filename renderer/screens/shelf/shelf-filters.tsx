import { useId } from 'react'
import { Link } from 'wouter'
import { useRead } from '../../shared/client/use-read.ts'
import { ROLE_WORDS, STATE_WORDS } from '../../shared/format/words.ts'
import { type Filters, leavesOut, NO_FILTERS } from './filters.ts'
import { PlainSelect } from './plain-select.tsx'
import { EXTRA_COLUMNS, type ExtraColumn } from './shelf-columns.tsx'
import type { ShownColumns } from './use-extra-columns.ts'

interface ShelfFiltersProps {
  readonly filters: Filters
  readonly onChange: (part: Partial<Filters>) => void
  readonly columns: ShownColumns
  readonly onColumn: (column: ExtraColumn, shown: boolean) => void
  readonly found: string
}

/** What narrows the shelf: letters, then a few choices on one line. */
export function ShelfFilters({ filters, onChange, columns, onColumn, found }: ShelfFiltersProps) {
  const id = useId()
  const crops = useRead('crop.list', {}).data?.crops ?? []
  return (
    <search className="shelf-filters stack-2" aria-label="Narrow the shelf">
      <label className="only-aloud" htmlFor={id}>
        Letters of a variety, a number, a place or a donor
      </label>
      <input
        id={id}
        type="search"
        className="table-input"
        placeholder="Variety, number, place, donor…"
        autoComplete="off"
        spellCheck={false}
        value={filters.text}
        onChange={(event) => onChange({ text: event.target.value })}
      />
      <div className="shelf-choices">
        <PlainSelect
          label="Crop"
          any="any crop"
          value={filters.cropId}
          choices={crops.map((crop) => [crop.cropId, crop.commonName])}
          onChange={(cropId) => onChange({ cropId })}
        />
        <PlainSelect
          label="State"
          any="any state"
          value={filters.state}
          choices={Object.entries(STATE_WORDS)}
          onChange={(state) => onChange({ state: state as Filters['state'] })}
        />
        <PlainSelect
          label="Role"
          any="any role"
          value={filters.role}
          choices={Object.entries(ROLE_WORDS)}
          onChange={(role) => onChange({ role: role as Filters['role'] })}
        />
        <label className="tick">
          <input
            type="checkbox"
            checked={filters.quarantined}
            onChange={(event) => onChange({ quarantined: event.target.checked })}
          />
          in quarantine
        </label>
        <label className="tick">
          <input
            type="checkbox"
            checked={filters.emptyToo}
            onChange={(event) => onChange({ emptyToo: event.target.checked })}
          />
          empty too
        </label>
        <span className="shelf-columns-shown">
          {EXTRA_COLUMNS.map(([column, word]) => (
            <label key={column} className="tick">
              <input
                type="checkbox"
                checked={columns[column]}
                onChange={(event) => onColumn(column, event.target.checked)}
              />
              show {word}
            </label>
          ))}
        </span>
        {leavesOut(filters) && (
          <button
            type="button"
            className="word-button"
            onClick={() => onChange({ ...NO_FILTERS, sort: filters.sort, descending: filters.descending })}
          >
            show all
          </button>
        )}
        <Link href="/stocktake">Stocktake</Link>
        <p className="shelf-found soft" role="status">
          {found}
        </p>
      </div>
    </search>
  )
}
