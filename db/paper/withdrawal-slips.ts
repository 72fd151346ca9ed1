import { message } from '../messages/message.ts'
import type { Texts } from '../messages/texts.ts'
import { PAGE_SIZES, POINTS_PER_MM } from './drawing/page-sizes.ts'
import { drawDocument, type PagesWanted, type PrintedDocument } from './drawing/paper-document.ts'
import { lackedLetters } from './drawing/printable-text.ts'
import {
  drawLines,
  heightOf,
  isSaid,
  type Paragraph,
  pagesOf,
  paragraphsIn,
  setParagraphs,
} from './drawing/text-flow.ts'

/** Seed that went out, as its slip lists it. */
export interface SlipLine {
  /** 'Runner bean ‘Painted Quill’'. */
  readonly name: string
  readonly lotNumber: string
  readonly amount: string
  /** What is planted as a clove, a bulb or a tuber, and kept otherwise than seed. */
  readonly pieces?: boolean
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
  /** Tells it in the language of whoever reads it. */
  readonly texts: Texts
}

/*
 * What is said of keeping: dry, cool, dark, and never moist into a freezer. Common practice, no source; the caution on drying
 * gel because gel with cobalt indicator is harmful (usual caution, from memory).
 */

/** Margins of each half of a page, mm. */
export const SLIP_MARGIN_MM = 14
const text = paragraphsIn(10)

/**
 * A PDF of slips, two to a page where both fit in a half; a longer one takes pages of its own.
 *
 * Throws RangeError where there is none.
 */
export async function withdrawalSlips(
  wanted: PagesWanted & { readonly slips: readonly WithdrawalSlip[] },
): Promise<PrintedDocument> {
  if (wanted.slips.length === 0) throw new RangeError('Choose at least one slip to print.')
  const page = PAGE_SIZES[wanted.paper]
  const margin = SLIP_MARGIN_MM * POINTS_PER_MM
  const width = page.width - 2 * margin
  const half = page.height / 2
  let lowerIsFree = false
  return drawDocument(wanted, ['regular', 'semibold', 'bold'], (pen, faces) =>
    wanted.slips.flatMap((slip) => {
      const missing = new Set<string>()
      const lines = setParagraphs(paragraphsOf(slip), width, faces, missing)
      const fitsHalf = heightOf(lines) <= half - 2 * margin
      if (fitsHalf && lowerIsFree) {
        pen.draw({ kind: 'bar', x: 0, y: 0, width, height: 0.3 }, margin, half)
        drawLines(pen, lines, margin, half + margin)
        lowerIsFree = false
      } else {
        for (const sheet of fitsHalf ? [lines] : pagesOf(lines, page.height - 2 * margin)) {
          pen.newPage(page.width, page.height)
          drawLines(pen, sheet, margin, margin)
        }
        lowerIsFree = fitsHalf
      }
      const name =
        slip.to === '' ? message('paper.the-slip-nobody') : message('paper.the-slip', { to: slip.to })
      return lackedLetters(name, missing)
    }),
  )
}

function paragraphsOf(slip: WithdrawalSlip): Paragraph[] {
  const told = slip.texts.text
  return [
    text(slip.libraryName, 0, { size: 9 }),
    text(slip.to === '' ? told('paper.slip-nobody') : told('paper.slip-for', { to: slip.to }), 2, {
      face: 'semibold',
      size: 15,
    }),
    text([slip.date, slip.purpose].filter((part) => part !== '').join(' · '), 0),
    ...slip.lines.flatMap((line, index) => [
      text(line.name, index === 0 ? 9 : 4, { face: 'semibold', unbrokenWithNext: true, ruled: true }),
      text(`${line.lotNumber} · ${line.amount}`, 0),
      ...line.cautions.map((caution) => text(caution, 1, { face: 'bold' })),
    ]),
    text(slip.promise, 8, { face: 'semibold', ruled: true }),
    text(slip.lines.every(({ pieces }) => pieces) ? '' : told('paper.care'), 8, { size: 9, ruled: true }),
    text(slip.lines.some(({ pieces }) => pieces) ? told('pieces.care') : '', 8, { size: 9, ruled: true }),
    text(told('paper.for-sowing'), 4, { size: 9, face: 'bold' }),
  ].filter(isSaid)
}
