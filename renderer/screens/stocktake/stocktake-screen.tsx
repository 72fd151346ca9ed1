import { useState } from 'react'
import { useLocation } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { useLotScan } from '../../shared/scans/scans.ts'
import { type OpenTable, TableDraft } from '../../shared/table-form/table-draft.tsx'
import { PlaceChoice } from './place-choice.tsx'
import './stocktake.css'
import { countedLots, emptyStocktake, isBlankStocktake, type StocktakeDraft } from './stocktake-draft.ts'
import { StocktakeSheet } from './stocktake-sheet.tsx'
import { StocktakeTable } from './stocktake-table.tsx'

const RULES = { kind: 'stocktake', blank: emptyStocktake, isBlank: isBlankStocktake } as const

const MOST_LOTS = 500

type Saved = Value<'stocktake.record'>

interface StocktakeScreenProps {
  readonly placeId?: number
  /** Lots that were chosen on the shelf, instead of those of a place. */
  readonly lotIds?: readonly number[]
}

/** Stocktake: the lots of a place, or chosen ones, one after the other, and what differs posted together. */
export function StocktakeScreen(props: StocktakeScreenProps) {
  return (
    <TableDraft<StocktakeDraft> rules={RULES}>{(open) => <Stocktake open={open} {...props} />}</TableDraft>
  )
}

interface StocktakeProps extends StocktakeScreenProps {
  readonly open: OpenTable<StocktakeDraft>
}

function Stocktake({ open, placeId, lotIds }: StocktakeProps) {
  const places = useRead('place.list', {})
  const listed = useRead(
    'lot.list',
    lotIds !== undefined
      ? { lotIds: [...lotIds], emptyToo: true, limit: MOST_LOTS }
      : placeId === undefined
        ? null
        : { placeId, limit: MOST_LOTS },
  )
  const [last, setLast] = useState<Saved | null>(null)
  const [, go] = useLocation()
  const problem = places.error ?? listed.error
  if (problem) return <ProblemText problem={problem.problem} />
  if (places.data === undefined) return <Opening />
  if (placeId === undefined && lotIds === undefined)
    return (
      <div className="page stocktake stack-4">
        <UnderWay draft={open.draft} />
        <ScanToPlace />
        <PlaceChoice />
        <Posted last={last} />
        <StocktakeSheet />
      </div>
    )
  if (listed.data === undefined) return <Opening />
  const place = places.data.places.find((each) => each.placeId === placeId)
  return (
    <StocktakeTable
      key={placeId ?? 'chosen'}
      open={open}
      place={lotIds === undefined ? (place?.path ?? 'this place') : 'the lots you ticked'}
      lots={listed.data.rows}
      more={Math.max(0, listed.data.total - MOST_LOTS)}
      onSaved={(saved) => {
        setLast(saved)
        go('/stocktake')
      }}
    />
  )
}

function Opening() {
  return <p className="soft waiting">Opening…</p>
}

/** A scanned label leads to the place where its lot stands. */
function ScanToPlace() {
  const [, go] = useLocation()
  const [refused, setRefused] = useState('')
  useLotScan(
    ({ placeId, lotNumber }) => {
      if (placeId === null) setRefused(`${lotNumber} has no place yet: move it to one on its card first.`)
      else go(`/stocktake/${placeId}`)
    },
    ({ sentence }) => setRefused(sentence),
  )
  return <p role="status">{refused}</p>
}

function UnderWay({ draft }: { readonly draft: StocktakeDraft }) {
  const { length } = countedLots(draft)
  if (length === 0) return null
  return (
    <p className="stocktake-said">
      {length === 1 ? '1 lot is' : `${length} lots are`} looked at and not posted yet. They go on with the
      next place.
    </p>
  )
}

function Posted({ last }: { readonly last: Saved | null }) {
  if (last === null) return null
  return (
    <section className="stocktake-said" aria-label="What was posted">
      <h2>Posted: {last.lines.length === 1 ? '1 lot' : `${last.lines.length} lots`}</h2>
      <ul>
        {last.lines.map(({ lotId, lotNumber, balance }) => (
          <li key={lotId}>
            {lotNumber}: {balance.words}
          </li>
        ))}
      </ul>
    </section>
  )
}
