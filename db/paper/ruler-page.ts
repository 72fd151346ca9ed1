import type { Texts } from '../messages/texts.ts'
import { INCH, PAGE_SIZES, POINTS_PER_MM } from './drawing/page-sizes.ts'
import { drawDocument, type PagesWanted, type PrintedDocument } from './drawing/paper-document.ts'
import type { Pen } from './drawing/pdf-pen.ts'
import { drawLines, type Faces, setParagraphs } from './drawing/text-flow.ts'

export interface RulerWanted extends PagesWanted {
  readonly texts: Texts
  /** How far the print is moved right and down, mm, as for labels. */
  readonly offsetMm: readonly [right: number, down: number]
}

/** The corner of both rulers, mm from the left and from the top. */
export const RULER_AT_MM = { x: 30, y: 40 } as const
/** How long each ruler is, mm; and the one in inches. */
const ACROSS_MM = 150
const DOWN_MM = 200
const INCHES = 6
const LINE_MM = 0.2

/** A page to hold a ruler against: whether the scale is true, and how far the print is moved. */
export function rulerPage(wanted: RulerWanted): Promise<PrintedDocument> {
  return drawDocument(wanted, ['regular', 'semibold'], (pen, faces) => {
    drawRulers(wanted, pen, faces)
    return []
  })
}

function drawRulers(wanted: RulerWanted, pen: Pen, faces: Faces): void {
  const page = PAGE_SIZES[wanted.paper]
  pen.newPage(page.width, page.height)
  const [right, down] = wanted.offsetMm
  const told = wanted.texts.text
  const bar = (x: number, y: number, width: number, height: number) => {
    const size = { width: width * POINTS_PER_MM, height: height * POINTS_PER_MM }
    pen.draw({ kind: 'bar', x: 0, y: 0, ...size }, (x + right) * POINTS_PER_MM, (y + down) * POINTS_PER_MM)
  }
  const text = (
    words: string,
    x: number,
    y: number,
    width: number,
    face: 'regular' | 'semibold' = 'regular',
    size = 9,
  ) =>
    drawLines(
      pen,
      setParagraphs([{ text: words, face, size, before: 0 }], width * POINTS_PER_MM, faces, new Set()),
      (x + right) * POINTS_PER_MM,
      (y + down) * POINTS_PER_MM,
    )
  const { x, y } = RULER_AT_MM
  bar(x, y - LINE_MM / 2, ACROSS_MM, LINE_MM)
  bar(x - LINE_MM / 2, y, LINE_MM, DOWN_MM)
  for (let mm = 0; mm <= ACROSS_MM; mm++) bar(x + mm - LINE_MM / 2, y, LINE_MM, tick(mm))
  for (let mm = 0; mm <= DOWN_MM; mm++) bar(x, y + mm - LINE_MM / 2, tick(mm), LINE_MM)
  for (let mm = 10; mm <= ACROSS_MM; mm += 10) text(`${mm}`, x + mm - 2, y + 6, 12, 'regular', 8)
  for (let mm = 20; mm <= DOWN_MM; mm += 10) text(`${mm}`, x + 7, y + mm - 1.7, 12, 'regular', 8)
  const inchesY = y + 30
  bar(x + 20, inchesY - LINE_MM / 2, INCHES * INCH, LINE_MM)
  for (let eighth = 0; eighth <= INCHES * 8; eighth++) {
    const long = eighth % 8 === 0 ? 5 : eighth % 4 === 0 ? 3.5 : 2
    bar(x + 20 + (eighth * INCH) / 8 - LINE_MM / 2, inchesY, LINE_MM, long)
  }
  for (let inch = 1; inch <= INCHES; inch++)
    text(told('paper.inches', { inches: inch }), x + 20 + inch * INCH - 4, inchesY + 6, 12, 'regular', 8)
  text(told('paper.ruler-scale'), x + 25, y + 55, 130, 'semibold', 14)
  text(told('paper.ruler-scale-how'), x + 25, y + 63, 120)
  text(told('paper.ruler-moved'), x + 25, y + 90, 130, 'semibold', 14)
  text(told('paper.ruler-moved-how', { x, y }), x + 25, y + 98, 120)
  text(told('paper.ruler-was-moved', { right, down }), x + 25, y + 120, 120)
}

function tick(mm: number): number {
  if (mm % 10 === 0) return 5
  return mm % 5 === 0 ? 3.5 : 2
}
