import type { DemoStep } from './demo-book.ts'
import type { RowOf } from './demo-tables.ts'

export function figureStep({ where, cells }: RowOf<'figures'>): DemoStep {
  const { on, crop, lot, reason } = cells
  const own = { plantsToKeep: cells.plants, viabilityThreshold: cells.threshold }
  return {
    on,
    where,
    async write(book) {
      if (crop !== null)
        return book.write('crop.change-policy', `figure-${crop}`, { cropId: crop, ...own, reason })
      const accessionId = book.idOf('accession', String(lot))
      const facts = { accessionId, ...own, regrowingsKept: cells.regrowings }
      return book.write('accession.change-policy', `figure-${lot}`, facts)
    },
  }
}

export function weightStep({ where, cells }: RowOf<'weights'>): DemoStep {
  const { lot, on, seeds_each: seeds, note } = cells
  const replicates = cells.grams.map((grams) => ({ seeds, grams }))
  return {
    on,
    where,
    write: (book) => {
      const facts = { lotId: book.idOf('lot', lot), on, replicates, note }
      return book.write('lot.record-weight', `weight-${lot}-${on}`, facts)
    },
  }
}

export function germinationStep({ where, cells }: RowOf<'germination'>): DemoStep {
  const { lot, on, tested, sprouted, from_stock: fromStock, note } = cells
  return {
    on,
    where,
    write: (book) => {
      const facts = { lotId: book.idOf('lot', lot), on, tested, sprouted, fromStock, note }
      return book.write('germination.record', `test-${lot}-${on}`, facts)
    },
  }
}

/** Rows of one day and reason are one entry. */
export function stocktakeSteps(rows: readonly RowOf<'stocktakes'>[]): DemoStep[] {
  const entries = Map.groupBy(rows, ({ cells }) => `${cells.on} ${cells.reason}`)
  return [...entries.values()].flatMap((lots) =>
    lots[0] === undefined ? [] : [stocktakeStep(lots[0], lots)],
  )
}

function stocktakeStep(first: RowOf<'stocktakes'>, rows: readonly RowOf<'stocktakes'>[]): DemoStep {
  const { on, reason, lot } = first.cells
  return {
    on,
    where: first.where,
    write: (book) => {
      const lines = rows.map(({ cells }) => ({ lotId: book.idOf('lot', cells.lot), found: cells.found }))
      return book.write('stocktake.record', `stocktake-${lot}-${on}`, { on, reason, lines })
    },
  }
}
