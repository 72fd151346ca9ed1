import type { PaperFonts } from './drawing/fonts.ts'
import { PAGE_SIZES, type PaperName, POINTS_PER_MM } from './drawing/page-sizes.ts'
import { openFaces, type PrintedDocument, startDocument } from './drawing/paper-document.ts'
import { openPen } from './drawing/pdf-pen.ts'
import { lackedLetters } from './drawing/printable-text.ts'
import { drawLines, type Paragraph, pagesOf, setParagraphs } from './drawing/text-flow.ts'

/** One variety on a grower's sheet. */
export interface GrowerVariety {
  /** 'Runner bean ‘Painted Quill’'. */
  readonly name: string
  /** Accession and lot, in one line. */
  readonly numbers: string
  readonly advice: readonly { readonly heading: string; readonly text: string }[]
  /** Whole sentences. */
  readonly cautions: readonly string[]
}

/** What one garden is asked to grow. */
export interface GrowerSheet {
  readonly to: string
  readonly garden: string
  readonly season: number
  readonly bringBackBy: string
  readonly varieties: readonly GrowerVariety[]
  readonly libraryName: string
}

export interface GrowerSheetsWanted {
  readonly sheets: readonly GrowerSheet[]
  readonly paper: PaperName
  readonly title: string
  readonly language: string
  readonly fonts: PaperFonts
}

const MARGIN_MM = 18
/** Room for the headings beside their text. */
const BESIDE_PT = 88
const NOTES = [
  ['Sown on', 'Came up', 'Flowered'],
  ['Plants saved from', 'Harvested on', 'What went wrong'],
]

/** A PDF of sheets, each beginning a page; a variety stands on one page where it fits there. Throws RangeError where there is none. */
export async function growerSheets(wanted: GrowerSheetsWanted): Promise<PrintedDocument> {
  if (wanted.sheets.length === 0) throw new RangeError('Choose at least one garden to print.')
  const page = PAGE_SIZES[wanted.paper]
  const faces = openFaces(wanted.fonts)
  const margin = MARGIN_MM * POINTS_PER_MM
  const document = await startDocument(wanted)
  const { regular, semibold, bold } = faces
  const pen = await openPen(
    document,
    new Map([
      ['regular', regular],
      ['semibold', semibold],
      ['bold', bold],
    ]),
  )
  const warnings: string[] = []
  for (const sheet of wanted.sheets) {
    const missing = new Set<string>()
    const lines = setParagraphs(paragraphsOf(sheet), page.width - 2 * margin, faces, missing)
    for (const onPage of pagesOf(lines, page.height - 2 * margin)) {
      pen.newPage(page.width, page.height)
      drawLines(pen, onPage, margin, margin)
    }
    warnings.push(...lackedLetters(`The sheet for ${sheet.garden}`, missing))
  }
  return { bytes: await document.save(), pages: document.getPageCount(), warnings }
}

function paragraphsOf(sheet: GrowerSheet): Paragraph[] {
  const text = (words: string, before: number, more: Partial<Paragraph> = {}): Paragraph => ({
    text: words,
    face: 'regular',
    size: 10.5,
    before,
    ...more,
  })
  const to = sheet.to === '' ? '' : `${sheet.to}, `
  return [
    text(sheet.libraryName, 0, { size: 9 }),
    text(`To grow in season ${sheet.season}`, 2, { face: 'semibold', size: 18 }),
    text(`${to}${sheet.garden} · please bring seed back by ${sheet.bringBackBy}`, 2),
    ...sheet.varieties.flatMap((variety) => [
      text(variety.name, 12, { face: 'semibold', size: 13, keptWithNext: true, ruled: true }),
      text(variety.numbers, 0, { size: 9, keptWithNext: true }),
      ...variety.cautions.map((caution) => text(caution, 2, { face: 'bold', keptWithNext: true })),
      ...variety.advice.map(({ heading, text: words }) =>
        text(words, 4, { beside: heading, indent: BESIDE_PT, keptWithNext: true }),
      ),
      ...NOTES.map((words, index) =>
        text(words.map((word) => `${word}: ____________`).join('   '), 6, {
          size: 9,
          indent: BESIDE_PT,
          keptWithNext: index < NOTES.length - 1,
        }),
      ),
    ]),
    text(
      'Seed for sowing is not food. Ask your local seed authority about rules for listed plants, weeds and protected varieties. If something fails, tell us: nobody minds, and the book needs to know.',
      12,
      { size: 9, ruled: true },
    ),
  ]
}
