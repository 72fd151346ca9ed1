import type { DemoStep } from './demo-book.ts'
import type { RowOf } from './demo-tables.ts'

/** The rounds that were walked: the rows of one day are one round. */
export function roundSteps(rows: readonly RowOf<'rounds'>[]): DemoStep[] {
  return [...Map.groupBy(rows, ({ cells }) => cells.on)].map(([on, walked]) => ({
    on,
    where: walked[0]?.where ?? '',
    async write(book) {
      const stops = [...Map.groupBy(walked, ({ cells }) => cells.place)]
      const places = []
      for (const [place, looks] of stops) {
        const checks = looks.map(({ cells: { look, found } }) => ({
          look,
          outcome: found === '' ? ('fine' as const) : ('found' as const),
          note: found,
        }))
        places.push({ placeId: await book.place(place), checks })
      }
      return book.write('round.record', `round-${on}`, {
        on,
        walkedBy: walked[0]?.cells.walked_by ?? '',
        places,
      })
    },
  }))
}
