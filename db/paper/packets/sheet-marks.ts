import { type Cell, cellAt, LINE_MM, labelsOnSheet, type SheetGeometry } from './label-sheets.ts'
import { PACKET } from './shipped-sheets.ts'

/** Dashes of a fold line and the white between them, mm. */
const DASH_MM = 2
const GAP_MM = 1.5
/** Crop marks begin so far from the labels and are so long, mm. */
const CROP_OFF_MM = 1
const CROP_MM = 4

/** The parts of a packet that are beside its front, mm: each holds text of its own. */
export interface PacketParts {
  readonly back: Cell
  readonly side: Cell
  readonly bottom: Cell
  readonly top: Cell
}

/** The parts around the n-th front of a folded sheet. */
export function packetParts(sheet: SheetGeometry, index: number): PacketParts {
  const { x, y, width, height } = cellAt(sheet, index)
  return {
    back: { x: x + width, y, width, height },
    side: { x: x + 2 * width, y, width: PACKET.side, height },
    bottom: { x, y: y + height, width, height: PACKET.bottom },
    top: { x: x + width, y: y - PACKET.top, width, height: PACKET.top },
  }
}

/** Lines to cut along, whole, and to fold along, dashed; as bars of ink in mm from the top left corner of the page. */
export function foldLines(sheet: SheetGeometry, index: number): Cell[] {
  const { x, y, width, height } = cellAt(sheet, index)
  const { side, bottom, top } = PACKET
  const [back, right, low] = [x + width, x + 2 * width, y + height]
  const cut = [
    across(x, y, width),
    down(x, y, height + bottom),
    across(x, low + bottom, width),
    down(back, low, bottom),
    across(back, low, width + side),
    down(right + side, y, height),
    across(right, y, side),
    down(right, y - top, top),
    across(back, y - top, width),
    down(back, y - top, top),
  ]
  const fold = [across(x, low, width), down(back, y, height), down(right, y, height), across(back, y, width)]
  return [...cut, ...fold.flatMap(dashed)]
}

/** Marks along the outside of all labels where a blade is set to part them; shortened at the edge of the page. */
export function cropMarks(sheet: SheetGeometry): Cell[] {
  const last = cellAt(sheet, labelsOnSheet(sheet) - 1)
  const [left, top] = [sheet.leftMm, sheet.topMm]
  const [right, bottom] = [last.x + last.width, last.y + last.height]
  const edges = (first: number, pitch: number, size: number, count: number) =>
    Array.from({ length: count }, (_, index) => first + index * pitch).flatMap((at) => [at, at + size])
  const columns = edges(left, sheet.pitchXMm, sheet.widthMm, sheet.columns).flatMap((x) => [
    inside(down(x, top - CROP_OFF_MM - CROP_MM, CROP_MM), sheet),
    inside(down(x, bottom + CROP_OFF_MM, CROP_MM), sheet),
  ])
  const rows = edges(top, sheet.pitchYMm, sheet.heightMm, sheet.rows).flatMap((y) => [
    inside(across(left - CROP_OFF_MM - CROP_MM, y, CROP_MM), sheet),
    inside(across(right + CROP_OFF_MM, y, CROP_MM), sheet),
  ])
  return [...columns, ...rows].filter(({ width, height }) => width > 0 && height > 0)
}

function across(x: number, y: number, width: number): Cell {
  return { x, y: y - LINE_MM / 2, width, height: LINE_MM }
}

function down(x: number, y: number, height: number): Cell {
  return { x: x - LINE_MM / 2, y, width: LINE_MM, height }
}

function dashed(line: Cell): Cell[] {
  const lies = line.width > line.height
  const length = Math.max(line.width, line.height)
  const count = Math.floor((length + GAP_MM) / (DASH_MM + GAP_MM))
  return Array.from({ length: count }, (_, index) => {
    const at = index * (DASH_MM + GAP_MM) + GAP_MM / 2
    const dash = Math.min(DASH_MM, length - at)
    return lies ? { ...line, x: line.x + at, width: dash } : { ...line, y: line.y + at, height: dash }
  })
}

function inside({ x, y, width, height }: Cell, { pageMm }: SheetGeometry): Cell {
  const [left, top] = [Math.max(0, x), Math.max(0, y)]
  const right = Math.min(pageMm.width, x + width)
  const bottom = Math.min(pageMm.height, y + height)
  return { x: left, y: top, width: right - left, height: bottom - top }
}
