import { useId } from 'react'
import { Link } from 'wouter'
import { NEED_STATES } from '../../../db/domain/needs/need.ts'
import { LOT_ROLES } from '../../../db/domain/shared/closed-sets.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
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
  const { t } = useTexts()
  const id = useId()
  const crops = useRead('crop.list', {}).data?.crops ?? []
  const choices = [
    ['cropId', 'crop', crops.map((crop) => [crop.cropId, crop.commonName] as const)],
    ['state', 'state', NEED_STATES.map((state) => [state, t(`shelf.state-${state}`)] as const)],
    ['role', 'role', LOT_ROLES.map((role) => [role, t(`shelf.role-${role}`)] as const)],
  ] as const
  return (
    <search className="shelf-filters stack-2" aria-label={t('shelf.narrow')}>
      <label className="only-aloud" htmlFor={id}>
        {t('shelf.find')}
      </label>
      <input
        id={id}
        type="search"
        className="table-input"
        placeholder={t('shelf.find-hint')}
        autoComplete="off"
        spellCheck={false}
        value={filters.text}
        onChange={(event) => onChange({ text: event.target.value })}
      />
      <div className="shelf-choices">
        {choices.map(([name, label, words]) => (
          <PlainSelect
            key={name}
            label={t(`shelf.narrow-${label}`)}
            any={t(`shelf.any-${label}`)}
            value={filters[name]}
            choices={words}
            onChange={(value) => onChange({ [name]: value })}
          />
        ))}
        <Tick
          label={t('shelf.in-quarantine')}
          checked={filters.quarantined}
          onChange={(quarantined) => onChange({ quarantined })}
        />
        <Tick
          label={t('shelf.empty-too')}
          checked={filters.emptyToo}
          onChange={(emptyToo) => onChange({ emptyToo })}
        />
        <span className="shelf-columns-shown">
          {EXTRA_COLUMNS.map((column) => (
            <Tick
              key={column}
              label={t(`shelf.show-${column}`)}
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
            {t('shelf.show-all')}
          </button>
        )}
        <Link href="/stocktake">{t('screen.stocktake')}</Link>
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
