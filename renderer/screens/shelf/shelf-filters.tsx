import { useId } from 'react'
import { Link } from 'wouter'
import { useRead } from '../../shared/client/use-read.ts'
import { ROLE_WORDS, STATE_WORDS } from '../../shared/format/words.ts'
import { type Filters, leavesOut, NO_FILTERS } from './filters.ts'
import type { ShownColumns } from './shelf-columns.tsx'
import { EXTRA_COLUMNS, type ExtraColumn } from './shelf-columns.tsx'

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
  const choices = [
    ['cropId', 'Crop', crops.map((crop) => [crop.cropId, crop.commonName] as const)],
    ['state', 'State', Object.entries(STATE_WORDS)],
    ['role', 'Role', Object.entries(ROLE_WORDS)],
  ] as const
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
        {choices.map(([name, label, words]) => (
          <PlainSelect
            key={name}
            label={label}
            any={`any ${label.toLowerCase()}`}
            value={filters[name]}
            choices={words}
            onChange={(value) => onChange({ [name]: value })}
          />
        ))}
        <Tick
          label="in quarantine"
          checked={filters.quarantined}
          onChange={(quarantined) => onChange({ quarantined })}
        />
        <Tick label="empty too" checked={filters.emptyToo} onChange={(emptyToo) => onChange({ emptyToo })} />
        <span className="shelf-columns-shown">
          {EXTRA_COLUMNS.map(([column, word]) => (
            <Tick
              key={column}
              label={`show ${word}`}
              checked={columns[column]}
              onChange={(shown) => onColumn(column, shown)}
            />
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

interface PlainSelectProps {
  readonly label: string
  /** The word for no choice. */
  readonly any: string
  readonly value: string
  readonly choices: readonly (readonly [value: string, word: string])[]
  readonly onChange: (value: string) => void
}

/** A choice on one line whose own words say what it narrows; its label is for those who hear the page. */
function PlainSelect({ label, any, value, choices, onChange }: PlainSelectProps) {
  return (
    <select
      className="plain-select"
      aria-label={label}
      data-narrows={value !== ''}
      value={value}
      onChange={(event) => onChange(event.target.value)}
    >
      <option value="">{any}</option>
      {choices.map(([choice, word]) => (
        <option key={choice} value={choice}>
          {word}
        </option>
      ))}
    </select>
  )
}

interface TickProps {
  readonly label: string
  readonly checked: boolean
  readonly onChange: (checked: boolean) => void
}

function Tick({ label, checked, onChange }: TickProps) {
  return (
    <label className="tick">
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.target.checked)} />
      {label}
    </label>
  )
}
