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

const COLUMNS: readonly RuledColumn[] = [
  ['Lot', 0.16],
  ['What it is', 0.28],
  ['The book says', 0.24],
  ['Found', 0.14],
  ['Note', 0.18],
]

/** A PDF to count on, place by place, with columns to write in. Throws RangeError where there is no place. */
export function stocktakeSheet(
  wanted: SheetWanted & { readonly places: readonly StocktakePlace[] },
): Promise<PrintedDocument> {
  return ruledSheet(wanted, {
    name: 'Stocktake sheet',
    columns: COLUMNS,
    opening: [],
    parts: wanted.places.map(({ path, lots }) => ({
      heading: path,
      about: [],
      rows: lots.map(({ number, name, book }) => [number, name, book]),
    })),
    partsKept: false,
  })
}
