import type { DemoBook, DemoStep } from './demo-book.ts'
import type { RowOf } from './demo-tables.ts'

type Care = RowOf<'care'>['cells']

/** A row of everyday care as an entry. A join pours the later lots into the first; the rest but a move take one lot. */
export function careStep({ where, cells }: RowOf<'care'>): DemoStep {
  const [first = ''] = cells.lots
  const key = `${cells.what}-${first}-${cells.on}`
  return { on: cells.on, where, write: (book) => writeCare(book, key, cells) }
}

async function writeCare(book: DemoBook, key: string, care: Care): Promise<unknown> {
  const { on, what, amount, words } = care
  const [lotId = 0, ...others] = care.lots.map((lot) => book.idOf('lot', lot))
  if (others.length > 0 && what !== 'move' && what !== 'join') throw new Error(`A ${what} is of one lot.`)
  switch (what) {
    case 'move': {
      const placeId = await book.place(String(care.place))
      return book.write('lot.move', key, { lotIds: [lotId, ...others], placeId, on })
    }
    case 'join':
      return book.write('lot.join', key, { intoLotId: lotId, fromLotIds: others, on, note: words })
    case 'stocktake':
      return book.write('lot.take-stock', key, { lotId, on, found: amount, reason: words })
    case 'discard':
      return book.write('lot.discard', key, { lotId, on, amount, reason: words })
    case 'quarantine':
      return book.write('lot.quarantine', key, { lotId, reason: words })
    case 'release':
      return book.write('lot.release', key, { lotId, checked: words })
  }
}
