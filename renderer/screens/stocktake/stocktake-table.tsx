import { useEffect, useRef } from 'react'
import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useFormat } from '../../shared/format/use-format.ts'
import { ActionButton } from '../../shared/parts/action-button.tsx'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { KeyHints } from '../../shared/table-form/key-hints.tsx'
import { OtherVisits } from '../../shared/table-form/other-visits.tsx'
import { SaveTrouble } from '../../shared/table-form/save-trouble.tsx'
import { StepForm } from '../../shared/table-form/step-form.tsx'
import { focusStepNamed } from '../../shared/table-form/steps.ts'
import { TextField } from '../../shared/table-form/text-field.tsx'
import type { DraftVisit } from '../../shared/table-form/use-draft.ts'
import {
  countedLots,
  type ListedLot,
  type StocktakeDraft,
  type StocktakeStep,
  saysNothing,
} from './stocktake-draft.ts'
import { Difference, StocktakeList } from './stocktake-list.tsx'
import { useStocktake } from './use-stocktake.ts'

interface StocktakeTableProps {
  readonly visit: DraftVisit<StocktakeDraft, StocktakeStep>
  readonly draft: StocktakeDraft
  readonly today: string
  readonly place: string
  readonly lots: readonly ListedLot[]
  /** How many more lots the place holds than one stocktake takes. */
  readonly more: number
  readonly onSaved: (saved: Value<'stocktake.record'>) => void
}

/** The lot in hand and what was found of it; beside it every lot of the place, with what differs. */
export function StocktakeTable(props: StocktakeTableProps) {
  const { visit, draft, today, place, lots } = props
  const form = useRef<HTMLElement>(null)
  const here = new Set(lots.map(({ lotId }) => lotId))
  const rows = [...lots, ...draft.lots.filter(({ lotId }) => !here.has(lotId))]
  const table = useStocktake({ ...props, dispatch: visit.dispatch, rows, form })
  useEffect(() => {
    if (form.current) focusStepNamed(form.current, 'found')
  }, [])
  const differing = [...table.previewed.values()].filter(
    ({ change }) => change !== null && (change.count !== 0 || change.massMg !== 0),
  ).length
  return (
    <StepForm
      label="Stocktake"
      className="table-screen"
      form={form}
      onEnd={() => table.goOn(1)}
      onEndApart={() => table.focus('found')}
      onSave={table.save}
      onMore={() => table.focus('reason')}
      catches={table.catches}
    >
      <div className="table-frame">
        <div className="table-column stack-4">
          <OtherVisits
            others={visit.others}
            inWords={stocktakeInWords}
            onGoOnWith={visit.goOnWith}
            onDiscard={visit.discard}
          />
          <div className="head-row">
            <h1>Stocktake: {place}</h1>
            <Link href="/stocktake">another place</Link>
          </div>
          {table.current === undefined ? (
            <p>No lot stands here. Scan the label of one that does, or choose another place.</p>
          ) : (
            <LotInHand lot={table.current} rows={rows} table={table} />
          )}
          {props.more > 0 && (
            <p className="table-field-warning">
              {props.more} more lots stand here than one stocktake takes. Post these first.
            </p>
          )}
          <KeyHints more="the reason" saves="posts them together" />
        </div>
        <aside className="table-visit" aria-label="This stocktake">
          <h2>What was found</h2>
          <StocktakeList
            rows={rows}
            counted={table.counted}
            previewed={table.previewed}
            at={table.current?.lotId}
            place={place}
            onTake={table.take}
          />
          <p className="table-total" role="status">
            {table.counted.length} of {rows.length} looked at, {differing} differ
          </p>
          <Terms draft={draft} today={today} table={table} />
          <SaveTrouble refused={table.shown.refused} kept={visit.kept} />
          <ActionButton className="button table-button" off={table.saving} onClick={table.save}>
            Post them together
          </ActionButton>
        </aside>
      </div>
    </StepForm>
  )
}

type Doing = ReturnType<typeof useStocktake>

interface LotInHandProps {
  readonly lot: ListedLot
  readonly rows: readonly ListedLot[]
  readonly table: Doing
}

function LotInHand({ lot, rows, table }: LotInHandProps) {
  const book = useRead('lot.get', { lotId: lot.lotId }).data
  const { lotId, lotNumber, variety, crop, place } = lot
  const type = (found: string) =>
    table.change({ kind: 'typed', lot: { lotId, lotNumber, variety, crop, place }, found })
  const previewed = table.previewed.get(lotId)
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a card
    <div
      role="group"
      aria-label="Lot in hand"
      className="table-card stack-3"
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented) return
        event.preventDefault()
        table.goOn(-1)
      }}
    >
      <p className="soft">
        Lot {rows.findIndex((row) => row.lotId === lotId) + 1} of {rows.length}
      </p>
      <h2>
        {variety}, {lotNumber}
      </h2>
      <p>
        {crop} · {book === undefined ? '…' : `the book says ${book.quantity.words}`}
      </p>
      <AmountField
        label="Found"
        step="found"
        size="table"
        value={table.found}
        onChange={type}
        lotId={lotId}
        problem={table.shown.found}
        instead={saysNothing(table.found) ? 'Nothing is left in it.' : undefined}
        offered={previewed?.problem?.choices ?? []}
        placeholder="what the scale says: 12.5 g, 30 seeds"
        after={<Difference previewed={previewed} />}
      />
      <p className="buttons">
        <button
          type="button"
          className="quiet-button table-button"
          onClick={() => {
            type('nothing')
            table.focus('found')
          }}
        >
          Nothing is left
        </button>
        <button type="button" className="quiet-button table-button" onClick={() => table.goOn(1)}>
          Next lot
        </button>
      </p>
    </div>
  )
}

interface TermsProps {
  readonly draft: StocktakeDraft
  readonly today: string
  readonly table: Doing
}

function Terms({ draft, today, table }: TermsProps) {
  const format = useFormat()
  return (
    <div className="visit-pins fields" data-steps-apart="">
      <TextField
        label="Why it may differ"
        step="reason"
        size="record"
        value={draft.reason}
        onChange={(reason) => table.change({ kind: 'terms', change: { reason } })}
        hint="Once for all of them, such as: yearly stocktake."
        problem={table.shown.reason}
      />
      <TextField
        label="On"
        step="on"
        size="record"
        type="date"
        value={draft.on === '' ? today : draft.on}
        words={draft.on === '' ? 'today' : format.day(draft.on)}
        onChange={(on) => table.change({ kind: 'terms', change: { on: on === today ? '' : on } })}
      />
    </div>
  )
}

function stocktakeInWords(draft: StocktakeDraft): string {
  const { length } = countedLots(draft)
  return `a stocktake, ${length === 1 ? '1 lot' : `${length} lots`} looked at`
}
