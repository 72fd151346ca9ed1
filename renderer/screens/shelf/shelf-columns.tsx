import { columnVisibilityFeature, createColumnHelper, tableFeatures } from '@tanstack/react-table'
import { useState } from 'react'
import type { ShelfRow } from '../../../db/contract/stock-operations.ts'
import { toFigures } from '../../../db/domain/amounts/in-words.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import type { Format } from '../../shared/format/format.ts'
import { SeedBar } from '../../shared/seed-bar/seed-bar.tsx'
import { StateMark } from '../../shared/state-mark/state-mark.tsx'
import type { ShelfSort } from './filters.ts'

export const shelfFeatures = tableFeatures({ columnVisibilityFeature })

const helper = createColumnHelper<typeof shelfFeatures, ShelfRow>()

/** Columns that the keeper may add. */
export const EXTRA_COLUMNS = ['place', 'donor'] as const
export type ExtraColumn = (typeof EXTRA_COLUMNS)[number]

/** The words of a heading that sort, and what they sort by. */
export const SORTS_OF_COLUMN: Readonly<Record<string, readonly (readonly [ShelfSort, Message])[]>> = {
  lot: [['number', message('shelf.lot')]],
  variety: [
    ['variety', message('shelf.variety')],
    ['crop', message('shelf.crop-after-variety')],
  ],
  harvest: [['harvest', message('shelf.fact-harvest')]],
  holds: [['count', message('shelf.holds')]],
  place: [['place', message('shelf.fact-place')]],
}

export function shelfColumns(format: Format, t: Texts['text']) {
  return helper.columns([
    helper.accessor('lotNumber', { id: 'lot', cell: ({ row }) => <LotCell row={row.original} t={t} /> }),
    helper.accessor('variety', { id: 'variety', cell: ({ row }) => <VarietyCell row={row.original} /> }),
    helper.accessor('harvest', { id: 'harvest' }),
    helper.accessor((row) => row.quantity.count, {
      id: 'holds',
      cell: ({ row }) => <HoldsCell row={row.original} format={format} t={t} />,
    }),
    helper.accessor('living', {
      id: 'living',
      cell: ({ row }) => <LivingCell row={row.original} t={t} />,
    }),
    helper.accessor('place', {
      id: 'place',
      cell: ({ getValue }) => getValue() || <None word={t('shelf.no-place')} />,
    }),
    helper.accessor('donor', {
      id: 'donor',
      cell: ({ getValue }) => getValue() || <None word={t('shelf.not-known')} />,
    }),
  ])
}

interface CellProps {
  readonly row: ShelfRow
  readonly format: Format
  readonly t: Texts['text']
}

function None({ word }: { readonly word: string }) {
  return <span className="soft">{word}</span>
}

function LotCell({ row, t }: Omit<CellProps, 'format'>) {
  return (
    <>
      <span className="shelf-number">{row.lotNumber}</span>
      {row.role !== 'working' && <span className="own-line soft small">{t(`shelf.role-${row.role}`)}</span>}
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

function HoldsCell({ row, format, t }: CellProps) {
  const { count, massMg, weighed, countDoubt, words } = row.quantity
  if (count === 0) return <span className="soft">{t('shelf.empty')}</span>
  const counted = count * countDoubt < 0.5
  const short = format.massShort(massMg)
  return (
    <>
      <span title={words}>
        {counted ? (
          format.number(count)
        ) : (
          <>
            <span className="soft">{t('shelf.about')}</span> {format.number(toFigures(count, 3))}
          </>
        )}
      </span>
      <span className="own-line soft small">
        {weighed && short === format.mass(massMg)
          ? short
          : t('amount.about', { amount: weighed ? short : format.mass(toFigures(massMg, 3)) })}
      </span>
    </>
  )
}

/**
 * The lot's own living seeds, and how its accession stands, told as the accession's where other seed decides it. Only
 * working stock and reserve out of quarantine count towards what must be kept: any other lot has no bar.
 */
function LivingCell({ row, t }: Omit<CellProps, 'format'>) {
  const { state, keep, accessionLiving, living } = row
  if (row.quarantined) return <StateMark mark="quarantine" />
  if (row.role !== 'working' && row.role !== 'reserve')
    return (
      <>
        <span className="soft">{t('shelf.not-counted')}</span>
        <StateMark mark={state} of="accession" />
      </>
    )
  const elsewhere = Math.max(0, accessionLiving - living)
  const figures = {
    ...{ living, accession: accessionLiving, keep },
    ...{ low: row.accessionLow, high: row.accessionHigh },
  }
  return (
    <>
      <SeedBar
        state={state}
        living={living}
        total={Math.max(row.quantity.count, living)}
        elsewhere={elsewhere}
        keep={keep}
        sentence={
          row.forecastOn === ''
            ? t('shelf.bar', figures)
            : t('shelf.bar-on', { ...figures, on: { day: row.forecastOn } })
        }
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
    localStorage.setItem(KEPT_AS, EXTRA_COLUMNS.flatMap((name) => (next[name] ? [name] : [])).join(' '))
    setColumns(next)
  }
  return [columns, show]
}
