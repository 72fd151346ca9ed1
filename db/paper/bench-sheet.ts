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

/** A test as the bench sheet shows it: what it is, and the counts that are still to be written down. */
export interface BenchTest {
  /** 'Runner bean ‘Painted Quill’'. */
  readonly name: string
  readonly lotNumber: string
  /** When and in what it was laid out, in one line. */
  readonly laidOut: string
  /** Whole sentences. */
  readonly cautions: readonly string[]
  /** Seeds of each replicate that are not yet counted. */
  readonly left: readonly number[]
  /** Each count to come, in words; an empty one has room for a date. */
  readonly counts: readonly string[]
}

export interface BenchSheetWanted {
  readonly tests: readonly BenchTest[]
  readonly libraryName: string
  readonly date: string
  readonly paper: PaperName
  readonly title: string
  readonly language: string
  readonly fonts: PaperFonts
}

export const BENCH_MARGIN_MM = 14
const COLUMNS: readonly RuledColumn[] = [
  ['Counted on', 0.2],
  ['Replicate', 0.2],
  ['Normal', 0.12],
  ['Abnormal', 0.12],
  ['Hard', 0.12],
  ['Fresh', 0.12],
  ['Dead', 0.12],
]
const MEANINGS =
  'Write only what is taken out on that day. Normal: would make a plant. Abnormal: would not. Hard: took no water up. ' +
  'Fresh: took water up, sound, did not sprout. Hard and fresh are told from dead at the last count.'

/** A PDF to write counts on, each test kept on one page where it fits. Throws RangeError where there is none. */
export async function benchSheet(wanted: BenchSheetWanted): Promise<PrintedDocument> {
  if (wanted.tests.length === 0) throw new RangeError('Choose at least one test to print.')
  const page = PAGE_SIZES[wanted.paper]
  const faces = openFaces(wanted.fonts)
  const margin = BENCH_MARGIN_MM * POINTS_PER_MM
  const width = page.width - 2 * margin
  const document = await startDocument(wanted)
  const used: FaceName[] = ['regular', 'semibold', 'bold']
  const pen = await openPen(document, new Map(used.map((name) => [name, faces[name]])))
  const missing = new Set<string>()
  const head: Paragraph[] = [
    { text: `Bench sheet · ${wanted.libraryName} · ${wanted.date}`, face: 'semibold', size: 13, before: 0 },
    { text: MEANINGS, face: 'regular', size: CELL_PT, before: 3 },
  ]
  const lines = [
    ...setParagraphs(head, width, faces, missing),
    ...wanted.tests.flatMap((test) => linesOf(test, width, faces, missing)),
  ]
  for (const sheet of pagesOf(lines, page.height - 2 * margin)) {
    pen.newPage(page.width, page.height)
    drawLines(pen, sheet, margin, margin)
  }
  return {
    bytes: await document.save(),
    pages: document.getPageCount(),
    warnings: lackedLetters('The bench sheet', missing),
  }
}

function linesOf(test: BenchTest, width: number, faces: Faces, missing: Set<string>): SetLine[] {
  const text = (words: string, face: FaceName, size: number, before: number): Paragraph => ({
    text: words,
    face,
    size,
    before,
    keptWithNext: true,
  })
  const head = [
    text(`${test.name} · ${test.lotNumber}`, 'semibold', 12, 14),
    text(test.laidOut, 'regular', CELL_PT, 0),
    ...test.cautions.map((caution) => text(caution, 'bold', CELL_PT, 1)),
  ]
  const by = { columns: COLUMNS, width, faces, missing }
  const row = (cells: readonly string[], face: FaceName, kept: boolean): SetLine =>
    ruledRow({ cells, face, kept }, by)
  const headings = row(
    COLUMNS.map(([heading]) => heading),
    'semibold',
    true,
  )
  const rows = test.counts.flatMap((count, at) =>
    test.left.map((left, index) => {
      const last = at === test.counts.length - 1 && index === test.left.length - 1
      // Only for the first of them is it known how many will still be there.
      const replicate = at === 0 ? `${index + 1}: ${left} left` : `${index + 1}`
      return row([index === 0 ? count : '', replicate], 'regular', !last)
    }),
  )
  return [...setParagraphs(head, width, faces, missing), headings, ...rows]
}
