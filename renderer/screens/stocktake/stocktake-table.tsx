import { Link } from 'wouter'
import type { Value } from '../../../db/contract/contract.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { useTexts } from '../../shared/format/use-texts.ts'
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
  const { t } = useTexts()
  const differing = [...previewed.values()].filter(
    ({ change }) => change !== null && (change.count !== 0 || change.massMg !== 0),
  ).length
  return (
    <TableFrame
      label={t('stocktake.title')}
      table={table}
      onEnd={() => work.goOn(1)}
      onEndApart={() => table.focus('found')}
      onSave={work.save}
      onMore={() => table.focus('reason')}
      catches={table.held.catches}
      inWords={stocktakeInWords}
      more={t('stocktake.more')}
      saves={t('stocktake.saves')}
      besideLabel={t('stocktake.this-stocktake')}
      besideHeading={t('stocktake.what-was-found')}
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
            {t('stocktake.so-far', { counted: counted.length, all: rows.length, differing })}
          </p>
          <Terms table={table} today={open.today} />
        </>
      }
      saveWord={t('stocktake.post')}
    >
      <div className="head-row">
        <h1>{t('stocktake.title-of', { place })}</h1>
        <Link href="/stocktake">{t('stocktake.another-place')}</Link>
      </div>
      {current === undefined ? (
        <p>{t('stocktake.no-lots')}</p>
      ) : (
        <LotInHand lot={current} rows={rows} work={work} />
      )}
      {more > 0 && <p className="table-field-warning">{t('stocktake.too-many', { more })}</p>}
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
  const { t } = useTexts()
  const type = (text: string) => work.type(lot, text)
  const previewed = work.previewed.get(lotId)
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a card
    <div
      role="group"
      aria-label={t('stocktake.in-hand')}
      className="table-card stack-3"
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented) return
        event.preventDefault()
        work.goOn(-1)
      }}
    >
      <p className="soft">
        {t('stocktake.nth', {
          nth: rows.findIndex((row) => row.lotId === lotId) + 1,
          all: rows.length,
        })}
      </p>
      <h2>
        {variety}, {lotNumber}
      </h2>
      <p>
        {book === undefined ? `${crop} · …` : t('stocktake.book-says', { crop, amount: book.quantity.words })}
      </p>
      <AmountField
        label={t('stocktake.found')}
        step="found"
        size="table"
        value={found}
        onChange={type}
        lotId={lotId}
        problem={table.shown.problems.found}
        instead={saysNothing(found) ? t('stocktake.nothing-in-it') : undefined}
        offered={previewed?.problem?.choices ?? []}
        placeholder={t('stocktake.found-like')}
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
          {t('stocktake.nothing')}
        </button>
        <button type="button" className="quiet-button table-button" onClick={() => work.goOn(1)}>
          {t('stocktake.next')}
        </button>
      </p>
    </div>
  )
}

function Terms({ table, today }: { readonly table: Work['table']; readonly today: string }) {
  const field = fieldsOf(table.draft, table.set, table.shown.problems)
  const { t } = useTexts()
  return (
    <div className="visit-pins fields" data-steps-apart="">
      <TextField
        label={t('stocktake.why')}
        size="record"
        {...field('reason')}
        hint={t('stocktake.why-hint')}
      />
      <DateField label={t('stocktake.on')} size="record" {...field('on')} today={today} />
    </div>
  )
}

function stocktakeInWords(draft: StocktakeDraft): Message {
  return message('stocktake.unfinished', { lots: countedLots(draft).length })
}
