import { drawLines, type PrintedDocument } from './donor-letters.ts'
import type { PaperFonts } from './drawing/fonts.ts'
import { PAGE_SIZES, type PaperName } from './drawing/page-sizes.ts'
import { openFaces, startDocument } from './drawing/paper-document.ts'
import { openPen } from './drawing/pdf-pen.ts'
import { lackedLetters } from './drawing/printable-text.ts'
import { type RuledColumn, ruledRow } from './drawing/ruled-row.ts'
import { type Faces, pagesOf, type SetLine, setParagraphs } from './drawing/text-flow.ts'
import { POINTS_PER_MM } from './packets/label-sheets.ts'
import type { FaceName } from './packets/packet-styles.ts'

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

export interface StocktakeSheetWanted {
  readonly places: readonly StocktakePlace[]
  readonly libraryName: string
  readonly date: string
  readonly paper: PaperName
  readonly title: string
  readonly language: string
  readonly fonts: PaperFonts
}

export const STOCKTAKE_MARGIN_MM = 14
const COLUMNS: readonly RuledColumn[] = [
  ['Lot', 0.16],
  ['What it is', 0.28],
  ['The book says', 0.24],
  ['Found', 0.14],
  ['Note', 0.18],
]

/** A PDF to count on, place by place, with columns to write in. Throws RangeError where there is no place. */
export async function stocktakeSheet(wanted: StocktakeSheetWanted): Promise<PrintedDocument> {
  if (wanted.places.length === 0) throw new RangeError('Choose at least one place to print.')
  const page = PAGE_SIZES[wanted.paper]
  const faces = openFaces(wanted.fonts)
  const margin = STOCKTAKE_MARGIN_MM * POINTS_PER_MM
  const width = page.width - 2 * margin
  const document = await startDocument(wanted)
  const used: FaceName[] = ['regular', 'semibold']
  const pen = await openPen(document, new Map(used.map((name) => [name, faces[name]])))
  const missing = new Set<string>()
  const head = `Stocktake · ${wanted.libraryName} · ${wanted.date}`
  const lines = [
    ...setParagraphs([{ text: head, face: 'semibold', size: 13, before: 0 }], width, faces, missing),
    ...wanted.places.flatMap((place) => linesOf(place, width, faces, missing)),
  ]
  for (const sheet of pagesOf(lines, page.height - 2 * margin)) {
    pen.newPage(page.width, page.height)
    drawLines(pen, sheet, margin, margin)
  }
  return {
    bytes: await document.save(),
    pages: document.getPageCount(),
    warnings: lackedLetters('The stocktake sheet', missing),
  }
}

function linesOf(
  { path, lots }: StocktakePlace,
  width: number,
  faces: Faces,
  missing: Set<string>,
): SetLine[] {
  const by = { columns: COLUMNS, width, faces, missing }
  const name = { text: path, face: 'semibold', size: 12, before: 14, keptWithNext: true } as const
  const headings = COLUMNS.map(([heading]) => heading)
  return [
    ...setParagraphs([name], width, faces, missing),
    ruledRow({ cells: headings, face: 'semibold', kept: true }, by),
    ...lots.map((lot) =>
      ruledRow({ cells: [lot.number, lot.name, lot.book], face: 'regular', kept: false }, by),
    ),
  ]
}
