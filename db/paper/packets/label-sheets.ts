import { type Message, message } from '../../messages/message.ts'

/** How much of a packet's facts a label has room for: from all that is known of the lot down to its number and QR code. */
export type Carries = 'all-known' | 'everything' | 'name-and-number' | 'number-only'

/** Whether a label carries a packet's usual facts, and not only its name or number. */
export function carriesFacts(carries: Carries): boolean {
  return carries === 'all-known' || carries === 'everything'
}

/**
 * A sheet of labels as it lies in the printer: millimetres, from the top left corner of the page.
 *
 * `confidence` tells where the figures come from: 'seen' in a published table of sheet sizes, or 'from-memory'. Makers'
 * sheets of one name differ slightly, so a print on plain paper held against the sheet is the real check.
 */
export interface SheetGeometry {
  /** A name that the library gave it, or what it is. */
  readonly name: Message | string
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
  readonly confidence: 'seen' | 'from-memory' | 'own'
  /** Whether each label is the front of a packet to be cut out and folded; see {@link packetParts}. */
  readonly folded?: boolean
}

/** A rectangle in millimetres, from the top left corner of the page. */
export interface Cell {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** Blank inside every edge of a label, mm: what a feeder may shift a sheet by (common practice, no source). */
export const INSIDE_MARGIN_MM = 2
/** How thick a line is that is cut or folded along, mm. */
export const LINE_MM = 0.2
/** Blank along the edge of the page, mm: many desktop printers leave 4 to 6 mm white (from memory). */
export const PAGE_EDGE_MM = 5

/** What a label of a size carries: as much as a shipped sheet's label of about that size does. Sizes in mm. */
export function carriesBySize(width: number, height: number): Carries {
  if (width < 60 || height < 25) return 'name-and-number'
  return height < 60 ? 'everything' : 'all-known'
}

/** The smallest label that a number and a QR code with modules of 0.33 mm stand on, mm. */
const SMALLEST_MM = { width: 25, height: 11 } as const
/** By how much the labels of a sheet may pass its page, mm: measures are taken by hand. */
const SLACK_MM = 0.3

/** What is wrong with a sheet of the library's own, with the measure to correct; null: it can be printed on. */
export function sheetFault(
  sheet: SheetGeometry,
): { readonly field: string; readonly because: Message } | null {
  const { widthMm, heightMm, pitchXMm, pitchYMm, columns, rows, pageMm } = sheet
  if (widthMm < SMALLEST_MM.width)
    return { field: 'widthMm', because: message('paper.sheet-too-narrow', { least: SMALLEST_MM.width }) }
  if (heightMm < SMALLEST_MM.height)
    return { field: 'heightMm', because: message('paper.sheet-too-low', { least: SMALLEST_MM.height }) }
  if (columns > 1 && pitchXMm < widthMm)
    return { field: 'pitchXMm', because: message('paper.sheet-next-across') }
  if (rows > 1 && pitchYMm < heightMm) return { field: 'pitchYMm', because: message('paper.sheet-next-down') }
  const last = cellAt(sheet, labelsOnSheet(sheet) - 1)
  if (last.x + last.width > pageMm.width + SLACK_MM)
    return { field: 'columns', because: message('paper.sheet-too-wide') }
  if (last.y + last.height > pageMm.height + SLACK_MM)
    return { field: 'rows', because: message('paper.sheet-too-long') }
  return crowdedEdge(sheet, last)
}

/** Labels of which so much lies in the white edge of the page that a number and a QR code have no room; else null. */
function crowdedEdge(sheet: SheetGeometry, last: Cell): ReturnType<typeof sheetFault> {
  const [from, to] = [inkBox(sheet, cellAt(sheet, 0)), inkBox(sheet, last)]
  const least = (size: number) => size - 2 * INSIDE_MARGIN_MM
  const because = (side: string) => message('paper.sheet-crowded', { side, edge: PAGE_EDGE_MM })
  if (from.width < least(SMALLEST_MM.width)) return { field: 'leftMm', because: because('left') }
  if (to.width < least(SMALLEST_MM.width)) return { field: 'columns', because: because('right') }
  if (from.height < least(SMALLEST_MM.height)) return { field: 'topMm', because: because('top') }
  if (to.height < least(SMALLEST_MM.height)) return { field: 'rows', because: because('bottom') }
  return null
}

/** Whether a sheet is the face of an envelope: one label as large as its page. */
export function isEnvelope({ widthMm, heightMm, pageMm }: SheetGeometry): boolean {
  return widthMm === pageMm.width && heightMm === pageMm.height
}

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

/** The part of a label that may carry ink: inside its margin and the lines around it, and away from the edge of the page. */
export function inkBox(sheet: SheetGeometry, cell: Cell): Cell {
  const margin = INSIDE_MARGIN_MM + (sheet.folded ? LINE_MM / 2 : 0)
  const left = Math.max(cell.x + margin, PAGE_EDGE_MM)
  const top = Math.max(cell.y + margin, PAGE_EDGE_MM)
  const right = Math.min(cell.x + cell.width - margin, sheet.pageMm.width - PAGE_EDGE_MM)
  const bottom = Math.min(cell.y + cell.height - margin, sheet.pageMm.height - PAGE_EDGE_MM)
  return { x: left, y: top, width: right - left, height: bottom - top }
}
