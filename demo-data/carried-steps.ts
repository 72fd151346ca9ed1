import type { DemoStep } from './demo-book.ts'
import type { RowOf } from './demo-tables.ts'

/** How an accession was bred and whether it is kept. */
export function decisionStep({ where, cells }: RowOf<'decisions'>): DemoStep {
  const { on, lot, breeding, policy, reason } = cells
  return {
    on,
    where,
    write: (book) => {
      const facts = { accessionId: book.idOf('accession', lot), breeding, policy, on, reason }
      return book.write('accession.decide-keeping', `decision-${lot}-${on}`, facts)
    },
  }
}

/** What lots have to be careful about. */
export function cautionStep({ where, cells: { on, lots, caution, note } }: RowOf<'cautions'>): DemoStep {
  return {
    on,
    where,
    write: (book) => {
      const lotIds = lots.map((lot) => book.idOf('lot', lot))
      return book.write('lot.set-caution', `caution-${lots[0]}-${caution}-${on}`, {
        lotIds,
        caution,
        on,
        note,
      })
    },
  }
}

/** A recall, and that people were told of it. */
export function recallSteps({ where, cells }: RowOf<'recalls'>): DemoStep[] {
  const { recall, on, lot, lots, reason, advice, told, told_on: toldOn } = cells
  return [
    {
      on,
      where,
      async write(book) {
        const lotIds = lots.map((name) => book.idOf('lot', name))
        const facts = { lotId: book.idOf('lot', lot), lotIds, on, reason, advice }
        const { recallId } = await book.write('recall.record', `recall-${recall}`, facts)
        book.remember('recall', recall, recallId)
      },
    },
    ...told.map(
      (person): DemoStep => ({
        on: toldOn,
        where,
        async write(book) {
          const of = { personId: await book.person(person) }
          const facts = { recallId: book.idOf('recall', recall), of, outcome: 'told', on: toldOn } as const
          return book.write('recall.record-outcome', `told-${recall}-${person}`, facts)
        },
      }),
    ),
  ]
}
