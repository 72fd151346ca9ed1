import type { LabelSheet } from '../contract/paper-operations.ts'

/** How much of a packet's facts a label has room for. */
export type Carries = 'everything' | 'name-and-number'

/**
 * A sheet of labels as it lies in the printer: millimetres, from the top left corner of the page.
 *
 * `confidence` tells where the figures come from: 'seen' in a published table of sheet sizes, or 'from memory'. Makers'
 * sheets of one name differ slightly, so a print on plain paper held against the sheet is the real check.
 */
export interface SheetGeometry {
  readonly name: string
  readonly pageMm: { readonly width: number; readonly height: number }
  readonly columns: number
  readonly rows: number
  readonly widthMm: number
  readonly heightMm: number
  readonly leftMm: number
  readonly topMm: number
  readonly pitchXMm: number
  readonly pitchYMm: number
  readonly carries: Carries
  readonly confidence: 'seen' | 'from memory'
}

/** A rectangle in millimetres, from the top left corner of the page. */
export interface Cell {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

const INCH = 25.4
/** A point is 1/72 inch (ISO 32000-1, 8.3.2.3). */
export const POINTS_PER_MM = 72 / INCH
/** ISO 216. */
const A4 = { width: 210, height: 297 }
/** ANSI/ASME Y14.1 size A: 8.5 by 11 inches. */
const LETTER = { width: 8.5 * INCH, height: 11 * INCH }

/** Every sheet that can be printed on. Letter sheets are whole fractions of an inch; A4 sheets are millimetres. */
export const SHEETS: Readonly<Record<LabelSheet, SheetGeometry>> = {
  'a4-21': {
    name: 'A4, 21 labels of 63.5 × 38.1 mm',
    pageMm: A4,
    columns: 3,
    rows: 7,
    widthMm: 63.5,
    heightMm: 38.1,
    leftMm: 7.2,
    topMm: 15.15,
    pitchXMm: 66,
    pitchYMm: 38.1,
    carries: 'everything',
    confidence: 'seen',
  },
  'a4-24': {
    name: 'A4, 24 labels of 63.5 × 33.9 mm',
    pageMm: A4,
    columns: 3,
    rows: 8,
    widthMm: 63.5,
    heightMm: 33.9,
    leftMm: 7.2,
    topMm: 12.9,
    pitchXMm: 66,
    pitchYMm: 33.9,
    carries: 'everything',
    confidence: 'from memory',
  },
  'a4-65': {
    name: 'A4, 65 labels of 38.1 × 21.2 mm',
    pageMm: A4,
    columns: 5,
    rows: 13,
    widthMm: 38.1,
    heightMm: 21.2,
    leftMm: 4.75,
    topMm: 10.7,
    pitchXMm: 40.6,
    pitchYMm: 21.2,
    carries: 'name-and-number',
    confidence: 'from memory',
  },
  'letter-30': {
    name: 'Letter, 30 labels of 2⅝ × 1 in',
    pageMm: LETTER,
    columns: 3,
    rows: 10,
    widthMm: 2.625 * INCH,
    heightMm: INCH,
    leftMm: (3 / 16) * INCH,
    topMm: 0.5 * INCH,
    pitchXMm: 2.75 * INCH,
    pitchYMm: INCH,
    carries: 'everything',
    confidence: 'seen',
  },
  'letter-10': {
    name: 'Letter, 10 labels of 4 × 2 in',
    pageMm: LETTER,
    columns: 2,
    rows: 5,
    widthMm: 4 * INCH,
    heightMm: 2 * INCH,
    leftMm: (5 / 32) * INCH,
    topMm: 0.5 * INCH,
    pitchXMm: 4.1875 * INCH,
    pitchYMm: 2 * INCH,
    carries: 'everything',
    confidence: 'from memory',
  },
  'letter-80': {
    name: 'Letter, 80 labels of 1¾ × ½ in',
    pageMm: LETTER,
    columns: 4,
    rows: 20,
    widthMm: 1.75 * INCH,
    heightMm: 0.5 * INCH,
    leftMm: (9 / 32) * INCH,
    topMm: 0.5 * INCH,
    pitchXMm: 2.0625 * INCH,
    pitchYMm: 0.5 * INCH,
    carries: 'name-and-number',
    confidence: 'from memory',
  },
}

/** Blank inside every edge of a label, mm: what a feeder may shift a sheet by (common practice, no source). */
export const INSIDE_MARGIN_MM = 2
/** Blank along the edge of the page, mm: many desktop printers leave 4 to 6 mm white (from memory). */
export const PAGE_EDGE_MM = 5

/** How many labels one sheet holds. */
export function labelsOnSheet(sheet: SheetGeometry): number {
  return sheet.columns * sheet.rows
}

/** The outline of the n-th label of a sheet, counted from 0 along the rows. */
export function cellAt(sheet: SheetGeometry, index: number): Cell {
  const column = index % sheet.columns
  const row = Math.floor(index / sheet.columns)
  return {
    x: sheet.leftMm + column * sheet.pitchXMm,
    y: sheet.topMm + row * sheet.pitchYMm,
    width: sheet.widthMm,
    height: sheet.heightMm,
  }
}

/** The part of a label that may carry ink: inside its margin, and away from the edge of the page. */
export function inkBox(sheet: SheetGeometry, cell: Cell): Cell {
  const left = Math.max(cell.x + INSIDE_MARGIN_MM, PAGE_EDGE_MM)
  const top = Math.max(cell.y + INSIDE_MARGIN_MM, PAGE_EDGE_MM)
  const right = Math.min(cell.x + cell.width - INSIDE_MARGIN_MM, sheet.pageMm.width - PAGE_EDGE_MM)
  const bottom = Math.min(cell.y + cell.height - INSIDE_MARGIN_MM, sheet.pageMm.height - PAGE_EDGE_MM)
  return { x: left, y: top, width: right - left, height: bottom - top }
}
