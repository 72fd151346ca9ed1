import { drawLines, type PrintedDocument } from './donor-letters.ts'
import type { PaperFonts } from './drawing/fonts.ts'
import { PAGE_SIZES, type PaperName } from './drawing/page-sizes.ts'
import { openFaces, startDocument } from './drawing/paper-document.ts'
import { openPen } from './drawing/pdf-pen.ts'
import { lackedLetters } from './drawing/printable-text.ts'
import { CELL_PT, type RuledColumn, ruledRow } from './drawing/ruled-row.ts'
import { type Faces, type Paragraph, pagesOf, type SetLine, setParagraphs } from './drawing/text-flow.ts'
import { POINTS_PER_MM } from './packets/label-sheets.ts'
import type { FaceName } from './packets/packet-styles.ts'

/** A place as the round sheet shows it. */
export interface SheetStop {
  readonly path: string
  /** When it was walked to last and is due, in one line. */
  readonly standing: string
  /** What is looked at there, by name; a reading has room of its own. */
  readonly looks: readonly string[]
  /** The numbers of the lots that lie there. */
  readonly lotNumbers: readonly string[]
}

export interface RoundSheetWanted {
  readonly stops: readonly SheetStop[]
  /** What each look means, a line each. */
  readonly meanings: readonly string[]
  readonly cautions: readonly string[]
  readonly libraryName: string
  readonly date: string
  readonly paper: PaperName
  readonly title: string
  readonly language: string
  readonly fonts: PaperFonts
}

export const ROUND_MARGIN_MM = 14
/** More lots than this are counted, not listed: nobody finds a number among more. */
const MOST_LISTED = 60
/** A line to write on: white alone would be set as one space. */
const TO_FILL = '_'.repeat(24)
const COLUMNS: readonly RuledColumn[] = [
  ['Look for', 0.24],
  ['Fine', 0.08],
  ['Found', 0.08],
  ['What, and in which lots', 0.6],
]

/** A PDF to tick on a round, each place kept on one page where it fits. Throws RangeError where there is none. */
export async function roundSheet(wanted: RoundSheetWanted): Promise<PrintedDocument> {
  if (wanted.stops.length === 0) throw new RangeError('Choose at least one place to print.')
  const page = PAGE_SIZES[wanted.paper]
  const faces = openFaces(wanted.fonts)
  const margin = ROUND_MARGIN_MM * POINTS_PER_MM
  const width = page.width - 2 * margin
  const document = await startDocument(wanted)
  const used: FaceName[] = ['regular', 'semibold', 'bold']
  const pen = await openPen(document, new Map(used.map((name) => [name, faces[name]])))
  const missing = new Set<string>()
  const lines = [
    ...setParagraphs(headOf(wanted), width, faces, missing),
    ...wanted.stops.flatMap((stop) => linesOf(stop, width, faces, missing)),
  ]
  for (const sheet of pagesOf(lines, page.height - 2 * margin)) {
    pen.newPage(page.width, page.height)
    drawLines(pen, sheet, margin, margin)
  }
  return {
    bytes: await document.save(),
    pages: document.getPageCount(),
    warnings: lackedLetters('The round sheet', missing),
  }
}

function headOf({ libraryName, date, meanings, cautions }: RoundSheetWanted): Paragraph[] {
  const text = (words: string, face: FaceName, before: number): Paragraph => ({
    text: words,
    face,
    size: CELL_PT,
    before,
  })
  return [
    { text: `Round sheet · ${libraryName} · ${date}`, face: 'semibold', size: 13, before: 0 },
    text(`Walked on ${TO_FILL} by ${TO_FILL}${TO_FILL}`, 'regular', 6),
    ...meanings.map((meaning, index) => text(meaning, 'regular', index === 0 ? 6 : 0)),
    ...cautions.map((caution) => text(caution, 'bold', 4)),
  ]
}

function linesOf(stop: SheetStop, width: number, faces: Faces, missing: Set<string>): SetLine[] {
  const text = (words: string, face: FaceName, size: number, before: number): Paragraph => ({
    text: words,
    face,
    size,
    before,
    keptWithNext: true,
  })
  const { lotNumbers } = stop
  const lots =
    lotNumbers.length === 0
      ? 'No lot with seed lies there.'
      : lotNumbers.length > MOST_LISTED
        ? `${lotNumbers.length} lots.`
        : `Lots: ${lotNumbers.join(', ')}`
  const head = [
    text(stop.path, 'semibold', 12, 14),
    text(stop.standing, 'regular', CELL_PT, 0),
    text(lots, 'regular', CELL_PT, 1),
  ]
  const by = { columns: COLUMNS, width, faces, missing }
  const headings = COLUMNS.map(([heading]) => heading)
  return [
    ...setParagraphs(head, width, faces, missing),
    ruledRow({ cells: headings, face: 'semibold', kept: true }, by),
    ...stop.looks.map((look, index) =>
      ruledRow({ cells: [look], face: 'regular', kept: index < stop.looks.length - 1 }, by),
    ),
  ]
}
