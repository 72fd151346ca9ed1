import type { DemoStep } from './demo-book.ts'
import type { RowOf } from './demo-tables.ts'

/** How an accession was bred and whether it is kept. */
export function keepingStep({ where, cells }: RowOf<'keeping'>): DemoStep {
  const { on, lot, ...decided } = cells
  return {
    on,
    where,
    write: (book) => {
      const accessionId = book.idOf('accession', lot)
      return book.write('accession.decide-keeping', `keeping-${lot}-${on}`, { accessionId, on, ...decided })
    },
  }
}

/** A recall, and what came of it as a whole on the same day. */
export function recallStep({ where, cells }: RowOf<'recalls'>): DemoStep {
  const { on, lot, reason, advice, outcome, note } = cells
  return {
    on,
    where,
    async write(book) {
      const lotIds = cells.with.map((name) => book.idOf('lot', name))
      const what = { lotId: book.idOf('lot', lot), lotIds, on, reason, advice }
      const { recallId } = await book.write('recall.record', `recall-${lot}-${on}`, what)
      const came = { recallId, of: 'the-whole', outcome, on, note } as const
      await book.write('recall.record-outcome', `recall-outcome-${lot}-${on}`, came)
    },
  }
}
