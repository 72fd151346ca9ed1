import { drawLines, type PrintedDocument } from './donor-letters.ts'
import type { PaperFonts } from './fonts.ts'
import { POINTS_PER_MM } from './label-sheets.ts'
import type { Item } from './packet-blocks.ts'
import type { FaceName } from './packet-styles.ts'
import { PAGE_SIZES, type PaperName } from './page-sizes.ts'
import { openFaces, startDocument } from './paper-document.ts'
import { openPen } from './pdf-pen.ts'
import { lackedLetters } from './printable-text.ts'
import { type Faces, type Paragraph, pagesOf, type SetLine, setParagraphs } from './text-flow.ts'

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
/** Room for a number written by hand: 7 mm, as ruled paper has (common practice, no source). */
const ROW_PT = 7 * POINTS_PER_MM
const RULE_PT = 0.5
const TEXT_PT = 9
/** What the columns are called, and their parts of the width. */
const COLUMNS: readonly (readonly [heading: string, part: number])[] = [
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
    { text: MEANINGS, face: 'regular', size: TEXT_PT, before: 3 },
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
    text(test.laidOut, 'regular', TEXT_PT, 0),
    ...test.cautions.map((caution) => text(caution, 'bold', TEXT_PT, 1)),
  ]
  const row = (cells: readonly string[], face: FaceName, kept: boolean): SetLine =>
    rowOf(cells, face, kept, { width, faces, missing })
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

/** A row of the grid: a rule beneath it, a rule between its cells, and what is printed in them. */
function rowOf(
  cells: readonly string[],
  face: FaceName,
  kept: boolean,
  of: { readonly width: number; readonly faces: Faces; readonly missing: Set<string> },
): SetLine {
  let left = 0
  const items: Item[] = [{ kind: 'bar', x: 0, y: ROW_PT, width: of.width, height: RULE_PT }]
  for (const [index, [, part]] of COLUMNS.entries()) {
    const width = part * of.width
    if (index > 0) items.push({ kind: 'bar', x: left, y: 0, width: RULE_PT, height: ROW_PT })
    const cell: Paragraph = {
      text: cells[index] ?? '',
      face,
      size: TEXT_PT,
      before: 0,
      indent: index > 0 ? 3 : 0,
    }
    const [set] = setParagraphs([cell], width, of.faces, of.missing)
    items.push(...(set?.items ?? []).map((item) => shifted(item, left)))
    left += width
  }
  return { items, before: 0, height: ROW_PT, kept }
}

/** An item moved right, and down to the middle of a row. */
function shifted(item: Item, right: number): Item {
  const down = (ROW_PT - TEXT_PT * 1.34) / 2
  if (item.kind === 'text') return { ...item, x: item.x + right, baseline: item.baseline + down }
  return { ...item, x: item.x + right, y: item.y + down }
}
