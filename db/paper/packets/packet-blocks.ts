import type { Texts } from '../../messages/texts.ts'
import type { Item } from '../drawing/items.ts'
import {
  balanceLines,
  fitLines,
  type Line,
  lineStart,
  lineWidth,
  piecesOf,
  runsFromRight,
} from '../drawing/text-fitting.ts'
import type { FaceName, Typeface } from '../drawing/typeface.ts'
import type { Carries } from './label-sheets.ts'
import type { Fact } from './packet-plans.ts'
import type { Styles } from './packet-styles.ts'
import type { PacketLabel } from './packet-text.ts'

/** A rectangle's size in points. */
export interface Room {
  readonly width: number
  readonly height: number
}

export interface Job {
  readonly label: PacketLabel
  readonly texts: Texts
  readonly room: Room
  readonly carries: Carries
  readonly faces: Readonly<Record<FaceName, Typeface>>
  readonly styles: Styles
  /** How far the QR code in the bottom right corner reaches in, and the white it needs beside that, points. */
  readonly codeSide: number
  readonly quiet: number
}

/** A text of a label, as a warning speaks of it. */
export type LabelText = Fact | 'crop' | 'harvest' | 'variety' | 'library' | 'caution' | 'facts'

export interface Block {
  readonly items: readonly Item[]
  /** Which texts were cut and end in an ellipsis. */
  readonly cut: readonly LabelText[]
  /** Where the next block may begin. */
  readonly bottom: number
}

/** From one baseline to the next, from the top of a line to its baseline, and a capital's height, in em. */
const LEADING = 1.16
const ASCENT = 0.78
const CAPITAL = 0.66

/** How wide ink may be that ends at `bottom`: what lies beside the QR code stops before its quiet zone. */
export function narrowedAt(job: Job, bottom: number): number {
  const above = job.room.height - job.codeSide - job.quiet
  return bottom > above ? job.room.width - job.codeSide - job.quiet : job.room.width
}

export interface Wanted {
  readonly face: FaceName
  readonly size: number
  readonly text: string
  readonly y: number
  readonly maxLines: number
  readonly mayBreak?: boolean
  readonly mayCut: boolean
  /** Whether lines are made alike in length. */
  readonly balanced?: boolean
  /** Whether separators are left out where a line ends or begins. */
  readonly runsOn?: boolean
  readonly what: LabelText
  readonly indent?: number
  readonly width?: number
}

export interface Paragraph extends Block {
  readonly widths: readonly number[]
  readonly baselines: readonly number[]
  /** Where the ink of the last line ends. */
  readonly inkBottom: number
}

/** Sets a text in lines from `y` down, beside the QR code where they reach it; null where it does not fit. */
export function paragraph(job: Job, wanted: Wanted): Paragraph | null {
  const { size, y, indent = 0 } = wanted
  const typeface = job.faces[wanted.face]
  const pieces = piecesOf(wanted.text)
  const first = y > 0 ? ASCENT : Math.max(CAPITAL, ...pieces.map((piece) => typeface.shape(piece.text).top))
  const baselineOf = (row: number) => y + (first + row * LEADING) * size
  const roomOf = (row: number) =>
    (wanted.width ?? narrowedAt(job, baselineOf(row) + (LEADING - ASCENT) * size)) - indent
  const fit = {
    widthOf: (row: number) => roomOf(row) / size,
    maxLines: wanted.maxLines,
    mayBreak: wanted.mayBreak ?? wanted.mayCut,
    mayCut: wanted.mayCut,
  }
  const broken = fitLines(typeface, pieces, fit)
  if (!broken) return null
  const fitted = wanted.balanced ? balanceLines(typeface, pieces, fit, broken) : broken
  const lines = fitted.lines
    .map((line) => (wanted.runsOn ? withoutLooseSeparators(line) : line))
    .filter((line) => line.length > 0)
  // A width of its own is a place on a line that others share.
  const alignsRight = (line: Line) => wanted.width === undefined && runsFromRight(line)
  const lastInk = Math.max(0, ...(lines.at(-1) ?? []).map((piece) => typeface.shape(piece.text).bottom))
  const baselines = lines.map((_, row) => baselineOf(row))
  const lastBaseline = baselines.at(-1) ?? y
  return {
    items: lines.map((line, row) => ({
      kind: 'text',
      face: wanted.face,
      size,
      x: indent + lineStart(typeface, line, roomOf(row) / size, alignsRight(line)) * size,
      baseline: baselineOf(row),
      line,
    })),
    cut: fitted.cut ? [wanted.what] : [],
    bottom: lastBaseline + (LEADING - ASCENT) * size,
    widths: lines.map((line) => lineWidth(typeface, line) * size),
    baselines,
    inkBottom: lastBaseline + lastInk * size,
  }
}

/** What stands between facts that run on. */
export const SEPARATOR = '·'

function withoutLooseSeparators(line: Line): Line {
  const first = line.findIndex((piece) => piece.text !== SEPARATOR)
  const last = line.findLastIndex((piece) => piece.text !== SEPARATOR)
  return first < 0 ? line : line.slice(first, last + 1)
}
