import { useState } from 'react'
import { useLocation } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
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
  const { t } = useTexts()
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
      place={lotIds === undefined ? (place?.path ?? t('stocktake.this-place')) : t('stocktake.ticked-lots')}
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
  const { t } = useTexts()
  return <p className="soft waiting">{t('stocktake.opening')}</p>
}

/** A scanned label leads to the place where its lot stands. */
function ScanToPlace() {
  const [, go] = useLocation()
  const [refused, setRefused] = useState('')
  const { t } = useTexts()
  useLotScan(
    ({ placeId, lotNumber }) => {
      if (placeId === null) setRefused(t('stocktake.without-place', { lot: lotNumber }))
      else go(`/stocktake/${placeId}`)
    },
    ({ sentence }) => setRefused(sentence),
  )
  return <p role="status">{refused}</p>
}

function UnderWay({ draft }: { readonly draft: StocktakeDraft }) {
  const { t } = useTexts()
  const lots = countedLots(draft).length
  if (lots === 0) return null
  return <p className="stocktake-said">{t('stocktake.under-way', { lots })}</p>
}

function Posted({ last }: { readonly last: Saved | null }) {
  const { t } = useTexts()
  if (last === null) return null
  return (
    <section className="stocktake-said" aria-label={t('stocktake.what-was-posted')}>
      <h2>{t('stocktake.posted', { lots: last.lines.length })}</h2>
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
