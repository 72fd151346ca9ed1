import { message } from '../messages/message.ts'
import type { PrintedDocument } from './drawing/paper-document.ts'
import type { RuledColumn } from './drawing/ruled-row.ts'
import { ruledSheet, type SheetWanted } from './drawing/ruled-sheet.ts'

/** A place with the lots that lie there. */
export interface StocktakePlace {
  readonly path: string
  readonly lots: readonly {
    readonly number: string
    /** 'Runner bean ‘Painted Quill’'. */
    readonly name: string
    /** What the book says it holds. */
    readonly book: string
  }[]
}

const COLUMNS = [
  ['lot', 0.16],
  ['what', 0.28],
  ['book', 0.24],
  ['found', 0.14],
  ['note', 0.18],
] as const

/** A PDF to count on, place by place, with columns to write in. Throws RangeError where there is no place. */
export function stocktakeSheet(
  wanted: SheetWanted & { readonly places: readonly StocktakePlace[] },
): Promise<PrintedDocument> {
  const { text } = wanted.texts
  return ruledSheet(wanted, {
    name: message('paper.title-stocktake'),
    document: message('paper.the-stocktake-sheet'),
    columns: COLUMNS.map(([name, part]): RuledColumn => [text(`paper.stocktake-${name}`), part]),
    opening: [],
    parts: wanted.places.map(({ path, lots }) => ({
      heading: path,
      about: [],
      rows: lots.map(({ number, name, book }) => [number, name, book]),
    })),
    partsKept: false,
  })
}
