import { columnVisibilityFeature, createColumnHelper, tableFeatures } from '@tanstack/react-table'
import { useState } from 'react'
import type { ShelfRow } from '../../../db/contract/stock-operations.ts'
import { toFigures } from '../../../db/domain/amounts/in-words.ts'
import type { Format } from '../../shared/format/format.ts'
import { ROLE_WORDS } from '../../shared/format/words.ts'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import type { ShelfSort } from './filters.ts'

export const shelfFeatures = tableFeatures({ columnVisibilityFeature })

const helper = createColumnHelper<typeof shelfFeatures, ShelfRow>()

/** Columns that the keeper may add, with their words. */
export const EXTRA_COLUMNS = [
  ['place', 'place'],
  ['donor', 'donor'],
] as const
export type ExtraColumn = (typeof EXTRA_COLUMNS)[number][0]

/** The words of a heading that sort, and what they sort by. */
export const SORTS_OF_COLUMN: Readonly<Record<string, readonly (readonly [ShelfSort, string])[]>> = {
  lot: [['number', 'Lot']],
  variety: [
    ['variety', 'Variety'],
    ['crop', 'crop'],
  ],
  harvest: [['harvest', 'Harvest']],
  holds: [['count', 'Holds']],
  place: [['place', 'Place']],
}

export function shelfColumns(format: Format) {
  return helper.columns([
    helper.accessor('lotNumber', { id: 'lot', cell: ({ row }) => <LotCell row={row.original} /> }),
    helper.accessor('variety', { id: 'variety', cell: ({ row }) => <VarietyCell row={row.original} /> }),
    helper.accessor('harvest', { id: 'harvest' }),
    helper.accessor((row) => row.quantity.count, {
      id: 'holds',
      cell: ({ row }) => <HoldsCell row={row.original} format={format} />,
    }),
    helper.accessor('living', {
      id: 'living',
      cell: ({ row }) => <LivingCell row={row.original} format={format} />,
    }),
    helper.accessor('place', { id: 'place', cell: ({ getValue }) => getValue() || <None word="no place" /> }),
    helper.accessor('donor', {
      id: 'donor',
      cell: ({ getValue }) => getValue() || <None word="not known" />,
    }),
  ])
}

function None({ word }: { readonly word: string }) {
  return <span className="soft">{word}</span>
}

function LotCell({ row }: { readonly row: ShelfRow }) {
  return (
    <>
      <span className="shelf-number">{row.lotNumber}</span>
      {row.role !== 'working' && <span className="own-line soft small">{ROLE_WORDS[row.role]}</span>}
    </>
  )
}

function VarietyCell({ row }: { readonly row: ShelfRow }) {
  return (
    <>
      <span className="own-line strong">{row.variety}</span>
      <span className="own-line soft small">{row.crop}</span>
    </>
  )
}

function HoldsCell({ row, format }: { readonly row: ShelfRow; readonly format: Format }) {
  const { count, massMg, weighed, countDoubt, words } = row.quantity
  if (count === 0) return <span className="soft">empty</span>
  const counted = count * countDoubt < 0.5
  return (
    <>
      <span title={words}>
        {!counted && <span className="soft">about </span>}
        {format.number(counted ? count : toFigures(count, 3))}
      </span>
      <span className="own-line soft small">
        {weighed ? format.massShown(massMg) : `about ${format.mass(toFigures(massMg, 3))}`}
      </span>
    </>
  )
}

/**
 * The lot's own living seeds, and how its accession stands, told as the accession's where other seed decides it. Only
 * working stock and reserve out of quarantine count towards what must be kept: any other lot has no bar.
 */
function LivingCell({ row, format }: { readonly row: ShelfRow; readonly format: Format }) {
  const { state, keep, accessionLiving, living } = row
  if (row.quarantined) return <StateMark mark="quarantine" />
  if (row.role !== 'working' && row.role !== 'reserve')
    return (
      <>
        <span className="soft">not counted to keep</span>
        <StateMark mark={state} of="accession" />
      </>
    )
  const elsewhere = Math.max(0, accessionLiving - living)
  const on = row.forecastOn === '' ? '' : ` on ${format.day(row.forecastOn)}`
  return (
    <>
      <SeedBar
        state={state}
        living={living}
        total={Math.max(row.quantity.count, living)}
        elsewhere={elsewhere}
        keep={keep}
        sentence={`this lot: about ${format.number(living)} living; its accession: about ${format.number(accessionLiving)} living, between ${format.number(row.accessionLow)} and ${format.number(row.accessionHigh)}${on}, and ${format.number(keep)} to keep`}
      />
      <StateMark mark={state} {...(elsewhere > 0 ? { of: 'accession' } : {})} />
    </>
  )
}

const KEPT_AS = 'shelf-columns'

export type ShownColumns = Readonly<Record<ExtraColumn, boolean>>

/** Which of the extra columns are shown, remembered on this machine. */
export function useExtraColumns(): [ShownColumns, (column: ExtraColumn, shown: boolean) => void] {
  const [columns, setColumns] = useState<ShownColumns>(() => {
    const kept = (localStorage.getItem(KEPT_AS) ?? '').split(' ')
    return { place: kept.includes('place'), donor: kept.includes('donor') }
  })
  const show = (column: ExtraColumn, shown: boolean) => {
    const next = { ...columns, [column]: shown }
    localStorage.setItem(KEPT_AS, EXTRA_COLUMNS.flatMap(([name]) => (next[name] ? [name] : [])).join(' '))
    setColumns(next)
  }
  return [columns, show]
}
