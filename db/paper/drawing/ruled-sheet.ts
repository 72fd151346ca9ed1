import type { PaperFonts } from './fonts.ts'
import { PAGE_SIZES, type PaperName, POINTS_PER_MM } from './page-sizes.ts'
import { openFaces, type PrintedDocument, startDocument } from './paper-document.ts'
import { openPen } from './pdf-pen.ts'
import { lackedLetters } from './printable-text.ts'
import { type RuledColumn, ruledRow } from './ruled-row.ts'
import { drawLines, type Paragraph, pagesOf, setParagraphs } from './text-flow.ts'

/** What every sheet to write on says of itself, and what it is printed on. */
export interface SheetWanted {
  readonly libraryName: string
  readonly date: string
  readonly paper: PaperName
  readonly title: string
  readonly language: string
  readonly fonts: PaperFonts
}

/** A part of a sheet: its head and its rows, with the headings of the columns between them. */
export interface RuledPart {
  /** Stays on the page on which its first row stands. */
  readonly head: readonly Omit<Paragraph, 'unbrokenWithNext'>[]
  /** The cells that are filled in; the others are left to write in. */
  readonly rows: readonly (readonly string[])[]
}

export interface RuledSheet {
  /** 'Bench sheet'. */
  readonly name: string
  readonly columns: readonly RuledColumn[]
  /** What stands above all parts, beneath the name, the library and the date. */
  readonly opening: readonly Paragraph[]
  readonly parts: readonly RuledPart[]
  /** Whether a part stays on one page where it fits. */
  readonly partsKept: boolean
}

export const SHEET_MARGIN_MM = 14

/** A PDF of rows to write in, part by part. */
export async function ruledSheet(wanted: SheetWanted, sheet: RuledSheet): Promise<PrintedDocument> {
  const page = PAGE_SIZES[wanted.paper]
  const faces = openFaces(wanted.fonts)
  const margin = SHEET_MARGIN_MM * POINTS_PER_MM
  const width = page.width - 2 * margin
  const document = await startDocument(wanted)
  const title = `${sheet.name} · ${wanted.libraryName} · ${wanted.date}`
  const opening: Paragraph[] = [{ text: title, face: 'semibold', size: 13, before: 0 }, ...sheet.opening]
  const set = [...opening, ...sheet.parts.flatMap(({ head }) => head)].map(({ face }) => face)
  const used = [...new Set([...set, 'regular', 'semibold'] as const)]
  const pen = await openPen(document, new Map(used.map((name) => [name, faces[name]])))
  const missing = new Set<string>()
  const by = { columns: sheet.columns, width, faces, missing }
  const headings = sheet.columns.map(([heading]) => heading)
  const lines = [
    ...setParagraphs(opening, width, faces, missing),
    ...sheet.parts.flatMap(({ head, rows }) => [
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
  return {
    bytes: await document.save(),
    pages: document.getPageCount(),
    warnings: lackedLetters(`The ${sheet.name.toLowerCase()}`, missing),
  }
}
