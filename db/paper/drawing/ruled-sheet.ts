import type { Message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { PAGE_SIZES, POINTS_PER_MM } from './page-sizes.ts'
import { drawDocument, type PagesWanted, type PrintedDocument } from './paper-document.ts'
import { lackedLetters } from './printable-text.ts'
import { CELL_PT, type RuledColumn, ruledRow } from './ruled-row.ts'
import { drawLines, type Paragraph, pagesOf, paragraphsIn, setParagraphs } from './text-flow.ts'

/** What every sheet to write on says of itself. */
export interface SheetWanted extends PagesWanted {
  readonly libraryName: string
  readonly date: string
  readonly texts: Texts
}

/** Text of a sheet beside its headings. */
export const sheetText = paragraphsIn(CELL_PT)

/** A part of a sheet: its head and its rows, with the headings of the columns between them. */
export interface RuledPart {
  readonly heading: string
  /** Stands beneath the heading; both stay on the page on which the first row stands. */
  readonly about: readonly Paragraph[]
  /** The cells that are filled in; the others are left to write in. */
  readonly rows: readonly (readonly string[])[]
}

export interface RuledSheet {
  /** 'Bench sheet'. */
  readonly name: Message
  /** What a warning calls it. */
  readonly document: Message
  readonly columns: readonly RuledColumn[]
  /** What stands above all parts, beneath the name, the library and the date. */
  readonly opening: readonly Paragraph[]
  readonly parts: readonly RuledPart[]
  /** Whether a part stays on one page where it fits. */
  readonly partsKept: boolean
}

export const SHEET_MARGIN_MM = 14

/** A PDF of rows to write in, part by part. Throws RangeError where there is no part. */
export async function ruledSheet(wanted: SheetWanted, sheet: RuledSheet): Promise<PrintedDocument> {
  if (sheet.parts.length === 0) throw new RangeError('There is nothing to print.')
  const page = PAGE_SIZES[wanted.paper]
  const margin = SHEET_MARGIN_MM * POINTS_PER_MM
  const width = page.width - 2 * margin
  const title = `${wanted.texts.say(sheet.name)} · ${wanted.libraryName} · ${wanted.date}`
  const opening = [sheetText(title, 0, { face: 'semibold', size: 13 }), ...sheet.opening]
  const parts = sheet.parts.map(({ heading, about, rows }) => ({
    head: [sheetText(heading, 14, { face: 'semibold', size: 12 }), ...about],
    rows,
  }))
  const set = [...opening, ...parts.flatMap(({ head }) => head)].map(({ face }) => face)
  return drawDocument(wanted, new Set([...set, 'regular', 'semibold']), (pen, faces) => {
    const missing = new Set<string>()
    const by = { columns: sheet.columns, width, faces, missing }
    const headings = sheet.columns.map(([heading]) => heading)
    const lines = [
      ...setParagraphs(opening, width, faces, missing),
      ...parts.flatMap(({ head, rows }) => [
        ...setParagraphs(
          head.map((paragraph) => ({ ...paragraph, unbrokenWithNext: true })),
          width,
          faces,
          missing,
        ),
        ruledRow({ cells: headings, face: 'semibold', kept: true }, by),
        ...rows.map((cells, index) =>
          ruledRow({ cells, face: 'regular', kept: sheet.partsKept && index < rows.length - 1 }, by),
        ),
      ]),
    ]
    for (const onPage of pagesOf(lines, page.height - 2 * margin)) {
      pen.newPage(page.width, page.height)
      drawLines(pen, onPage, margin, margin)
    }
    return lackedLetters(sheet.document, missing)
  })
}
