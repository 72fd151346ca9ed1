import { type Message, message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { POINTS_PER_MM } from '../drawing/page-sizes.ts'
import {
  type DocumentWanted,
  drawDocument,
  openFaces,
  type PrintedDocument,
} from '../drawing/paper-document.ts'
import type { Pen } from '../drawing/pdf-pen.ts'
import { lackedLetters } from '../drawing/printable-text.ts'
import { qrCode } from '../drawing/qr-squares.ts'
import { drawLines, type Faces } from '../drawing/text-flow.ts'
import type { FaceName } from '../drawing/typeface.ts'
import { type Cell, cellAt, inkBox, labelsOnSheet, PAGE_EDGE_MM, type SheetGeometry } from './label-sheets.ts'
import { PART_MARGIN_MM, packetBack, type SetPart } from './packet-back.ts'
import { type Layout, layoutPacket } from './packet-layout.ts'
import { type PacketLabel, printableLabel } from './packet-text.ts'
import { labelWarnings } from './packet-warnings.ts'
import { cropMarks, foldLines, packetParts } from './sheet-marks.ts'

export interface PacketLabelSheets extends DocumentWanted {
  readonly labels: readonly PacketLabel[]
  readonly texts: Texts
  readonly sheet: SheetGeometry
  /** The first label of the first sheet to print on, from 1 along the rows: those before it are used up. */
  readonly startAt: number
  /** How far the print is moved right and down, mm, to make up for how a printer feeds its paper. */
  readonly offsetMm: readonly [right: number, down: number]
  /** Whether marks stand outside the labels where a blade is set. */
  readonly cropMarks: boolean
}

/**
 * A PDF of packet labels, true to size, black ink only. A warning names the lot it concerns and says what to do.
 *
 * Throws RangeError where there is no label, where `startAt` is not a label of the sheet, or where a scan code holds
 * anything but capitals and digits.
 */
export async function packetLabels(wanted: PacketLabelSheets): Promise<PrintedDocument> {
  const { sheet } = wanted
  checkWanted(wanted, sheet)
  const warnings = offsetWarnings(sheet, wanted.offsetMm)
  const laidOut = layEach(wanted, openFaces(wanted.fonts), warnings)
  return drawDocument(wanted, facesUsed(laidOut), (pen) => {
    drawSheets(wanted, laidOut, pen)
    return warnings
  })
}

function drawSheets(wanted: PacketLabelSheets, laidOut: readonly Laid[], pen: Pen): void {
  const { sheet } = wanted
  const perSheet = labelsOnSheet(sheet)
  const [right, down] = wanted.offsetMm
  const bars = (cells: readonly Cell[]) => {
    for (const { x, y, width, height } of cells) {
      const size = { width: width * POINTS_PER_MM, height: height * POINTS_PER_MM }
      pen.draw({ kind: 'bar', x: 0, y: 0, ...size }, (x + right) * POINTS_PER_MM, (y + down) * POINTS_PER_MM)
    }
  }
  laidOut.forEach((laid, index) => {
    const position = (index + wanted.startAt - 1) % perSheet
    if (index === 0 || position === 0) {
      pen.newPage(sheet.pageMm.width * POINTS_PER_MM, sheet.pageMm.height * POINTS_PER_MM)
      if (wanted.cropMarks) bars(cropMarks(sheet))
    }
    drawLabel(pen, laid.layout, inkBox(sheet, cellAt(sheet, position)), wanted.offsetMm)
    if (!sheet.folded) return
    bars(foldLines(sheet, position))
    const parts = packetParts(sheet, position)
    for (const { part, lines } of laid.parts) {
      const { x, y } = parts[part]
      const at = (mm: number, moved: number) => (mm + PART_MARGIN_MM + moved) * POINTS_PER_MM
      drawLines(pen, lines, at(x, right), at(y, down))
    }
  })
}

function checkWanted(wanted: PacketLabelSheets, sheet: SheetGeometry): void {
  const perSheet = labelsOnSheet(sheet)
  if (wanted.labels.length === 0) throw new RangeError('Choose at least one label to print.')
  if (!Number.isSafeInteger(wanted.startAt) || wanted.startAt < 1 || wanted.startAt > perSheet) {
    throw new RangeError(`This sheet has ${perSheet} labels: start at one of 1 to ${perSheet}.`)
  }
}

/** A label, and what stands on the other parts of a packet. */
interface Laid {
  readonly layout: Layout
  readonly parts: readonly SetPart[]
}

function facesUsed(laidOut: readonly Laid[]): Set<FaceName> {
  const items = laidOut.flatMap(({ layout, parts }) => [
    ...layout.items,
    ...parts.flatMap(({ lines }) => lines.flatMap((line) => line.items)),
  ])
  return new Set(items.flatMap((item) => (item.kind === 'text' ? [item.face] : [])))
}

/** Lays out every label; the same label twice, as several copies are, is laid out once. */
function layEach({ labels, sheet, texts }: PacketLabelSheets, faces: Faces, warnings: Message[]): Laid[] {
  const room = smallestRoom(sheet)
  const known = new Map<PacketLabel, Laid>()
  return labels.map((raw) => {
    const seen = known.get(raw)
    if (seen) return seen
    const { label, missing } = printableLabel(raw, faces.regular)
    const layout = layoutPacket(label, qrCode(label.scanCode), room, sheet.carries, faces, texts)
    const back = sheet.folded
      ? packetBack(label, packetParts(sheet, 0), faces, texts)
      : { parts: [], warnings: [] }
    warnings.push(
      ...lackedLetters(label.lotNumber, missing),
      ...labelWarnings(label, layout, sheet.carries),
      ...back.warnings,
    )
    const laid = { layout, parts: back.parts }
    known.set(raw, laid)
    return laid
  })
}

/** The room that every label of a sheet has, points: labels at the edge of the page have less of it than others. */
function smallestRoom(sheet: SheetGeometry): { readonly width: number; readonly height: number } {
  const boxes = Array.from({ length: labelsOnSheet(sheet) }, (_, index) =>
    inkBox(sheet, cellAt(sheet, index)),
  )
  return {
    width: Math.min(...boxes.map(({ width }) => width)) * POINTS_PER_MM,
    height: Math.min(...boxes.map(({ height }) => height)) * POINTS_PER_MM,
  }
}

function drawLabel(pen: Pen, layout: Layout, box: Cell, [right, down]: readonly [number, number]): void {
  const x = (box.x + right) * POINTS_PER_MM
  const y = (box.y + down) * POINTS_PER_MM
  for (const item of layout.items) pen.draw(item, x, y)
}

function offsetWarnings(sheet: SheetGeometry, [right, down]: readonly [number, number]): Message[] {
  const first = inkBox(sheet, cellAt(sheet, 0))
  const last = inkBox(sheet, cellAt(sheet, labelsOnSheet(sheet) - 1))
  const nearest = Math.min(
    first.x + right,
    first.y + down,
    sheet.pageMm.width - last.x - last.width - right,
    sheet.pageMm.height - last.y - last.height - down,
  )
  if ((right === 0 && down === 0) || nearest >= PAGE_EDGE_MM) return []
  const toTenths = Math.round(10 * Math.max(0, nearest)) / 10
  return [message('paper.moved-to-edge', { right, down, nearest: toTenths })]
}
