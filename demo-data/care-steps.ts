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
  if (others.length > 0 && what !== 'move' && what !== 'merge') throw new Error(`A ${what} is of one lot.`)
  switch (what) {
    case 'move': {
      const placeId = await book.place(String(care.place))
      return book.write('lot.move', key, { lotIds: [lotId, ...others], placeId, on })
    }
    case 'merge':
      return book.write('lot.merge', key, { intoLotId: lotId, fromLotIds: others, on, note: words })
    case 'stocktake':
      return book.write('lot.record-count', key, { lotId, on, found: amount, reason: words })
    case 'discard':
      return book.write('lot.discard', key, { lotId, on, amount, reason: words })
    case 'quarantine':
      return book.write('lot.quarantine', key, { lotId, reason: words })
    case 'release':
      return book.write('lot.release', key, { lotId, checked: words })
  }
}

export function splitStep({ where, cells }: RowOf<'splits'>): DemoStep {
  const { lot, on, from, amount, role, place, held_by: heldBy, note } = cells
  return {
    on,
    where,
    async write(book) {
      const placeId = place === null ? null : await book.place(place)
      const facts = { lotId: book.idOf('lot', from), on, amount, role, placeId, heldBy, note }
      const { newLotId } = await book.write('lot.split', `split-${lot}`, facts)
      book.remember('lot', lot, newLotId)
    },
  }
}

export function printingStep({ where, cells }: RowOf<'printing'>): DemoStep {
  const { on, kind, sheet, start_at: startAt } = cells
  return {
    on,
    where,
    async write(book) {
      const itemIds = await book.waitingToPrint(kind)
      const facts = { kind, itemIds, sheet: sheet ?? undefined, startAt }
      return book.write('tray.mark-printed', `printing-${kind}-${on}`, facts)
    },
  }
}

export function takenBackStep({ where, cells }: RowOf<'taken-back'>): DemoStep {
  const { on, entry, reason } = cells
  return {
    on,
    where,
    write: (book) => {
      const facts = { entryId: book.idOf('entry', entry), reason }
      return book.write('entry.undo', `back-${entry}`, facts)
    },
  }
}
