import { useEffect, useRef } from 'react'
import type { LotRecord } from '../../../db/contract/shelf-operations.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { ProblemText } from '../../shared/parts/problem-text.tsx'
import { LotActions } from './actions/lot-actions.tsx'
import './lot-card.css'
import { Card } from '../../shared/panes/card.tsx'
import { LotCautions } from './lot-cautions.tsx'
import { LotFacts } from './lot-facts.tsx'
import { LotFamily } from './lot-family.tsx'
import { LotHead } from './lot-head.tsx'
import { LotLedger } from './lot-ledger.tsx'
import { LotMeasurements } from './lot-measurements.tsx'
import { LotStock } from './lot-stock.tsx'
import { LotStorage } from './lot-storage.tsx'
import { LotOutlook } from './outlook/lot-outlook.tsx'
import { useResting } from './use-resting.ts'

/** A key held down runs through the list; the card follows once it rests for so long. */
const REST_MS = 60

interface LotCardProps {
  readonly lotId: number
  /** Whether a card that comes up takes the focus: where nothing else is on the screen. */
  readonly takesFocus: boolean
  /** Not null where the keeper asked for the focus to go to this card, anew each time. */
  readonly entered: object | null
}

/** The index card of a lot. */
export function LotCard({ lotId, takesFocus, entered }: LotCardProps) {
  const resting = useResting(lotId, REST_MS)
  const lot = useRead('lot.get', { lotId: resting }, { keepLast: true })
  const top = useRef<HTMLDivElement>(null)
  const shown = lot.data?.lotId
  useEffect(() => {
    if (shown === undefined) return
    top.current?.parentElement?.scrollTo({ top: 0 })
    if (takesFocus) top.current?.querySelector<HTMLElement>('h2')?.focus()
  }, [shown, takesFocus])
  useEffect(() => {
    if (entered !== null && shown === lotId) top.current?.querySelector<HTMLElement>('h2')?.focus()
  }, [entered, shown, lotId])
  if (lot.data === undefined) return lot.error === null ? null : <ProblemText problem={lot.error.problem} />
  return (
    <div ref={top}>
      <OneLot key={lot.data.lotId} lot={lot.data} />
    </div>
  )
}

function OneLot({ lot }: { readonly lot: LotRecord }) {
  return (
    <Card className="lot-card" name={`${lot.variety}, lot ${lot.lotNumber}`}>
      <LotHead lot={lot} />
      <div className="card-sheet">
        <LotStock lot={lot} />
        <LotCautions lot={lot} />
        <LotActions lot={lot} />
        <LotFacts lot={lot} />
        <LotFamily lot={lot} />
        <LotOutlook lotId={lot.lotId} />
        <LotStorage lotId={lot.lotId} />
        <LotMeasurements lot={lot} />
        <LotLedger lot={lot} />
      </div>
    </Card>
  )
}
