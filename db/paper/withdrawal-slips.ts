import { CARE, FOR_SOWING } from './care-words.ts'
import type { PaperFonts } from './drawing/fonts.ts'
import { PAGE_SIZES, type PaperName, POINTS_PER_MM } from './drawing/page-sizes.ts'
import { openFaces, type PrintedDocument, startDocument } from './drawing/paper-document.ts'
import { openPen } from './drawing/pdf-pen.ts'
import { lackedLetters } from './drawing/printable-text.ts'
import {
  drawLines,
  heightOf,
  type Paragraph,
  pagesOf,
  type SetLine,
  setParagraphs,
} from './drawing/text-flow.ts'

/** Seed that went out, as its slip lists it. */
export interface SlipLine {
  /** 'Runner bean ‘Painted Quill’'. */
  readonly name: string
  readonly lotNumber: string
  readonly amount: string
  /** Whole sentences. */
  readonly cautions: readonly string[]
}

export interface WithdrawalSlip {
  /** The name alone; empty where nobody was named. */
  readonly to: string
  readonly date: string
  readonly purpose: string
  readonly lines: readonly SlipLine[]
  /** What is promised back, and by when, in one sentence; empty: nothing. */
  readonly promise: string
  readonly libraryName: string
}

export interface SlipsWanted {
  readonly slips: readonly WithdrawalSlip[]
  readonly paper: PaperName
  readonly title: string
  readonly language: string
  readonly fonts: PaperFonts
}

/** Margins of each half of a page, mm. */
export const SLIP_MARGIN_MM = 14

/** A PDF of slips, two to a page where both fit in a half; a longer one takes pages of its own. */
export async function withdrawalSlips(wanted: SlipsWanted): Promise<PrintedDocument> {
  if (wanted.slips.length === 0) throw new RangeError('Choose at least one slip to print.')
  const page = PAGE_SIZES[wanted.paper]
  const faces = openFaces(wanted.fonts)
  const margin = SLIP_MARGIN_MM * POINTS_PER_MM
  const half = page.height / 2
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
  let lowerIsFree = false
  for (const slip of wanted.slips) {
    const missing = new Set<string>()
    const lines = setParagraphs(paragraphsOf(slip), page.width - 2 * margin, faces, missing)
    warnings.push(...lackedLetters(`The slip for ${slip.to || 'somebody not named'}`, missing))
    const fitsHalf = heightOf(lines) <= half - 2 * margin
    if (fitsHalf && lowerIsFree) {
      pen.draw({ kind: 'bar', x: 0, y: 0, width: page.width - 2 * margin, height: 0.3 }, margin, half)
      drawLines(pen, lines, margin, half + margin)
      lowerIsFree = false
      continue
    }
    const sheets: SetLine[][] = fitsHalf ? [lines] : pagesOf(lines, page.height - 2 * margin)
    for (const sheet of sheets) {
      pen.newPage(page.width, page.height)
      drawLines(pen, sheet, margin, margin)
    }
    lowerIsFree = fitsHalf
  }
  return { bytes: await document.save(), pages: document.getPageCount(), warnings }
}

function paragraphsOf(slip: WithdrawalSlip): Paragraph[] {
  const text = (words: string, before: number, more: Partial<Paragraph> = {}): Paragraph[] =>
    words === '' ? [] : [{ text: words, face: 'regular', size: 10, before, ...more }]
  return [
    ...text(slip.libraryName, 0, { size: 9 }),
    ...text(slip.to === '' ? 'Seed handed out' : `Seed for ${slip.to}`, 2, { face: 'semibold', size: 15 }),
    ...text([slip.date, slip.purpose].filter((part) => part !== '').join(' · '), 0),
    ...slip.lines.flatMap((line, index) => [
      ...text(line.name, index === 0 ? 9 : 4, { face: 'semibold', unbrokenWithNext: true, ruled: true }),
      ...text(`${line.lotNumber} · ${line.amount}`, 0),
      ...line.cautions.flatMap((caution) => text(caution, 1, { face: 'bold' })),
    ]),
    ...text(slip.promise, 8, { face: 'semibold', ruled: true }),
    ...text(CARE, 8, { size: 9, ruled: true }),
    ...text(FOR_SOWING, 4, { size: 9, face: 'bold' }),
  ]
}
