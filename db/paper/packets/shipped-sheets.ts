import type { ShippedSheet } from '../../contract/print-operations.ts'
import { type Message, message } from '../../messages/message.ts'
import { INCH } from '../drawing/page-sizes.ts'
import type { Carries, SheetGeometry } from './label-sheets.ts'

/** ISO 216. */
const A4 = { width: 210, height: 297 }
/** ANSI/ASME Y14.1 size A: 8.5 by 11 inches. */
const LETTER = { width: 8.5 * INCH, height: 11 * INCH }

type Confidence = SheetGeometry['confidence']
type Grid = readonly [columns: number, rows: number]
type Size = readonly [width: number, height: number]

/** A sheet of labels by its grid, a label's size, where the first stands, and how far it is from one to the next. */
function labels(
  pageMm: SheetGeometry['pageMm'],
  size: Message | string,
  [columns, rows]: Grid,
  [widthMm, heightMm]: Size,
  [leftMm, topMm]: Size,
  pitchXMm: number,
  carries: Carries,
  confidence: Confidence,
): SheetGeometry {
  const page = pageMm === A4 ? 'A4' : 'Letter'
  const name = message('paper.sheet-labels', { page, labels: columns * rows, size })
  const pitch = { pitchXMm, pitchYMm: heightMm }
  return { name, pageMm, columns, rows, widthMm, heightMm, leftMm, topMm, ...pitch, carries, confidence }
}

/** Millimetres on an A4 sheet. */
function onA4(
  grid: Grid,
  size: Size,
  at: Size,
  pitchXMm: number,
  carries: Carries,
  confidence: Confidence = 'from-memory',
): SheetGeometry {
  return labels(
    A4,
    message('paper.sheet-millimetres', { width: size[0], height: size[1] }),
    grid,
    size,
    at,
    pitchXMm,
    carries,
    confidence,
  )
}

/** Inches on a Letter sheet. */
function onLetter(
  name: string,
  grid: Grid,
  [width, height]: Size,
  [left, top]: Size,
  pitchX: number,
  carries: Carries,
  confidence: Confidence = 'from-memory',
): SheetGeometry {
  const size = [width * INCH, height * INCH] as const
  const at = [left * INCH, top * INCH] as const
  return labels(LETTER, name, grid, size, at, pitchX * INCH, carries, confidence)
}

/** The face of an envelope that is fed upright, its flap at the top. */
function envelope(name: string, width: number, height: number): SheetGeometry {
  return {
    name: message('paper.sheet-envelope', { name, width: Math.round(width), height: Math.round(height) }),
    pageMm: { width, height },
    columns: 1,
    rows: 1,
    widthMm: width,
    heightMm: height,
    leftMm: 0,
    topMm: 0,
    pitchXMm: width,
    pitchYMm: height,
    carries: 'all-known',
    confidence: 'from-memory',
  }
}

/** A packet's front, and its flaps, mm: large enough for a tablespoon of peas, and two to a page. Our own figures. */
export const PACKET = { width: 80, height: 105, side: 12, bottom: 14, top: 14 } as const

/** Two packets to a page, each cut out and folded: front, back beside it, flaps around them. */
function packets(page: string, pageMm: SheetGeometry['pageMm']): SheetGeometry {
  const { width, height, side, bottom, top } = PACKET
  const whole = { width: 2 * width + side, height: top + height + bottom }
  return {
    name: message('paper.sheet-packets', { page, width, height }),
    pageMm,
    columns: 1,
    rows: 2,
    widthMm: width,
    heightMm: height,
    leftMm: (pageMm.width - whole.width) / 2,
    topMm: (pageMm.height - 2 * whole.height) / 2 + top,
    pitchXMm: whole.width,
    pitchYMm: whole.height,
    carries: 'everything',
    confidence: 'own',
    folded: true,
  }
}

/**
 * Every sheet that the app brings along. Label sheets: published tables of sizes, and from memory. Envelopes: the usual
 * coin sizes in inches, from memory, and ISO 269.
 */
export const SHEETS: Readonly<Record<ShippedSheet, SheetGeometry>> = {
  'a4-21': onA4([3, 7], [63.5, 38.1], [7.2, 15.15], 66, 'everything', 'seen'),
  'a4-24': onA4([3, 8], [63.5, 33.9], [7.2, 12.9], 66, 'everything'),
  'a4-14': onA4([2, 7], [99.1, 38.1], [4.65, 15.15], 101.6, 'everything'),
  'a4-8': onA4([2, 4], [99.1, 67.7], [4.65, 13.1], 101.6, 'all-known'),
  'a4-40': onA4([4, 10], [48.5, 25.4], [8, 21.5], 48.5, 'name-and-number'),
  'a4-65': onA4([5, 13], [38.1, 21.2], [4.75, 10.7], 40.6, 'name-and-number'),
  'letter-30': onLetter('2⅝ × 1 in', [3, 10], [2.625, 1], [3 / 16, 0.5], 2.75, 'everything', 'seen'),
  'letter-14': onLetter('4 × 1⅓ in', [2, 7], [4, 4 / 3], [5 / 32, 5 / 6], 4.1875, 'everything'),
  'letter-10': onLetter('4 × 2 in', [2, 5], [4, 2], [5 / 32, 0.5], 4.1875, 'everything'),
  'letter-6': onLetter('4 × 3⅓ in', [2, 3], [4, 10 / 3], [5 / 32, 0.5], 4.1875, 'all-known'),
  'letter-80': onLetter('1¾ × ½ in', [4, 20], [1.75, 0.5], [9 / 32, 0.5], 2.0625, 'name-and-number'),
  'packet-a4': packets('A4', A4),
  'packet-letter': packets('Letter', LETTER),
  'coin-1': envelope('No. 1', 2.25 * INCH, 3.5 * INCH),
  'coin-3': envelope('No. 3', 2.5 * INCH, 4.25 * INCH),
  'coin-4-half': envelope('No. 4½', 3 * INCH, 4.875 * INCH),
  'coin-5-half': envelope('No. 5½', 3.125 * INCH, 5.5 * INCH),
  'coin-6': envelope('No. 6', 3.375 * INCH, 6 * INCH),
  'coin-7': envelope('No. 7', 3.5 * INCH, 6.5 * INCH),
  'iso-c7': envelope('C7', 81, 114),
  'iso-c6': envelope('C6', 114, 162),
}
