import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { AmountField } from '../../shared/table-form/amount-field.tsx'
import { DateField, TextField } from '../../shared/table-form/fields.tsx'
import { fieldsOf } from '../../shared/table-form/refusals.ts'
import type { OpenTable } from '../../shared/table-form/table-draft.tsx'
import { TableFrame } from '../../shared/table-form/table-frame.tsx'
import { countedLots, type ListedLot, type StocktakeDraft, saysNothing } from './stocktake-draft.ts'
import { Difference, StocktakeList } from './stocktake-list.tsx'
import { useStocktake } from './use-stocktake.ts'

interface StocktakeTableProps {
  readonly open: OpenTable<StocktakeDraft>
  readonly place: string
  readonly lots: readonly ListedLot[]
  /** How many more lots the place holds than one stocktake takes. */
  readonly more: number
  readonly onSaved: (saved: Value<'stocktake.record'>) => void
}

/** The lot in hand and what was found of it; beside it every lot of the place, with what differs. */
export function StocktakeTable({ open, place, lots, more, onSaved }: StocktakeTableProps) {
  const here = new Set(lots.map(({ lotId }) => lotId))
  const rows = [...lots, ...open.draft.lots.filter(({ lotId }) => !here.has(lotId))]
  const work = useStocktake(open, rows, onSaved)
  const { table, current, counted, previewed } = work
  const differing = [...previewed.values()].filter(
    ({ change }) => change !== null && (change.count !== 0 || change.massMg !== 0),
  ).length
  return (
    <TableFrame
      label="Stocktake"
      table={table}
      onEnd={() => work.goOn(1)}
      onEndApart={() => table.focus('found')}
      onSave={work.save}
      onMore={() => table.focus('reason')}
      catches={table.held.catches}
      inWords={stocktakeInWords}
      more="the reason"
      saves="posts them together"
      besideLabel="This stocktake"
      besideHeading="What was found"
      beside={
        <>
          <StocktakeList
            rows={rows}
            counted={counted}
            previewed={previewed}
            at={current?.lotId}
            place={place}
            onTake={work.take}
          />
          <p className="table-total" role="status">
            {counted.length} of {rows.length} looked at, {differing} differ
          </p>
          <Terms table={table} today={open.today} />
        </>
      }
      saveWord="Post them together"
    >
      <div className="head-row">
        <h1>Stocktake: {place}</h1>
        <Link href="/stocktake">another place</Link>
      </div>
      {current === undefined ? (
        <p>No lot stands here. Scan the label of one that does, or choose another place.</p>
      ) : (
        <LotInHand lot={current} rows={rows} work={work} />
      )}
      {more > 0 && (
        <p className="table-field-warning">
          {more} more lots stand here than one stocktake takes. Post these first.
        </p>
      )}
    </TableFrame>
  )
}

type Work = ReturnType<typeof useStocktake>

interface LotInHandProps {
  readonly lot: ListedLot
  readonly rows: readonly ListedLot[]
  readonly work: Work
}

function LotInHand({ lot, rows, work }: LotInHandProps) {
  const book = useRead('lot.get', { lotId: lot.lotId }).data
  const { lotId, lotNumber, variety, crop } = lot
  const { table, found } = work
  const type = (text: string) => work.type(lot, text)
  const previewed = work.previewed.get(lotId)
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a card
    <div
      role="group"
      aria-label="Lot in hand"
      className="table-card stack-3"
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented) return
        event.preventDefault()
        work.goOn(-1)
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
        value={found}
        onChange={type}
        lotId={lotId}
        problem={table.shown.problems.found}
        instead={saysNothing(found) ? 'Nothing is left in it.' : undefined}
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
        <button type="button" className="quiet-button table-button" onClick={() => work.goOn(1)}>
          Next lot
        </button>
      </p>
    </div>
  )
}

function Terms({ table, today }: { readonly table: Work['table']; readonly today: string }) {
  const field = fieldsOf(table.draft, table.set, table.shown.problems)
  return (
    <div className="visit-pins fields" data-steps-apart="">
      <TextField
        label="Why it may differ"
        size="record"
        {...field('reason')}
        hint="Once for all of them, such as: yearly stocktake."
      />
      <DateField label="On" size="record" {...field('on')} today={today} />
    </div>
  )
}

function stocktakeInWords(draft: StocktakeDraft): string {
  const { length } = countedLots(draft)
  return `a stocktake, ${length === 1 ? '1 lot' : `${length} lots`} looked at`
}
