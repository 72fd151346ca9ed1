import type { ShippedSheet } from '../../db/contract/print-operations.ts'
import {
  type Cell,
  cellAt,
  inkBox,
  labelsOnSheet,
  type SheetGeometry,
} from '../../db/paper/packets/label-sheets.ts'
import { PART_MARGIN_MM } from '../../db/paper/packets/packet-back.ts'
import { foldLines, packetParts } from '../../db/paper/packets/sheet-marks.ts'
import { measured } from './packets.ts'
import type { Raster, ReadCharacter, ReadPdf } from './read-pdf.ts'

/** Rounding of coordinates in the file, mm. */
const TOLERANCE_MM = 0.005
/** PDFium rounds a letter's box outwards to 1/64 of its size. */
const MM_PER_POINT_OF_TYPE = 25.4 / 72 / 64

/** What was read inside one label, in the order of the file. */
export interface ReadLabel {
  readonly page: number
  /** Its place on the sheet, from 0. */
  readonly position: number
  readonly room: Cell
  readonly characters: readonly ReadCharacter[]
  readonly text: string
}

type AnySheet = ShippedSheet | SheetGeometry

/** The rooms for ink of a sheet's labels, moved by an offset. */
export function roomsOf(sheet: AnySheet, offset: Offset = [0, 0]): Cell[] {
  return cellsOf(sheet).map((cell) => moved(inkBox(measured(sheet), cell), offset))
}

type Offset = readonly [right: number, down: number]

function moved(cell: Cell, [right, down]: Offset): Cell {
  return { ...cell, x: cell.x + right, y: cell.y + down }
}

/** Where a sheet may have ink at all: its labels, and of packets also their lines and the text of their other parts. */
export function inkRoomsOf(sheet: AnySheet): Cell[] {
  const geometry = measured(sheet)
  if (!geometry.folded) return roomsOf(sheet)
  return [
    ...roomsOf(sheet),
    ...partRoomsOf(geometry),
    ...cellsOf(sheet).flatMap((_, at) => foldLines(geometry, at)),
  ]
}

/** The rooms for text on the parts of packets beside their fronts. */
function partRoomsOf(sheet: SheetGeometry): Cell[] {
  if (!sheet.folded) return []
  return cellsOf(sheet).flatMap((_, at) =>
    Object.values(packetParts(sheet, at)).map(({ x, y, width, height }: Cell) => ({
      x: x + PART_MARGIN_MM,
      y: y + PART_MARGIN_MM,
      width: width - 2 * PART_MARGIN_MM,
      height: height - 2 * PART_MARGIN_MM,
    })),
  )
}

/** The labels of a sheet. */
export function cellsOf(sheet: AnySheet): Cell[] {
  const geometry = measured(sheet)
  return Array.from({ length: labelsOnSheet(geometry) }, (_, index) => cellAt(geometry, index))
}

/** Sorts the characters of a PDF into the labels they stand in, and tells which stand in none. */
export function labelsReadBack(pdf: ReadPdf, sheet: AnySheet, offset: Offset = [0, 0]) {
  const rooms = roomsOf(sheet, offset)
  const parts = partRoomsOf(measured(sheet)).map((room) => moved(room, offset))
  const astray: ReadCharacter[] = []
  const beside: ReadCharacter[] = []
  const labels: ReadLabel[] = []
  pdf.pages.forEach((page, pageIndex) => {
    const found = new Map<number, ReadCharacter[]>()
    for (const character of page.characters) {
      const position = rooms.findIndex((room) => holds(room, character))
      const here = found.get(position)
      if (position < 0) {
        if (parts.some((room) => holds(room, character))) beside.push(character)
        else astray.push(character)
      } else if (here) here.push(character)
      else found.set(position, [character])
    }
    for (const [position, characters] of [...found].toSorted(([a], [b]) => a - b)) {
      const text = characters.map((read) => read.character).join('')
      labels.push({ page: pageIndex, position, room: rooms[position] as Cell, characters, text })
    }
  })
  return { labels, astray, beside: beside.map(({ character }) => character).join('') }
}

function holds(room: Cell, { ink, at, character, sizePt }: ReadCharacter): boolean {
  const slack = TOLERANCE_MM + sizePt * MM_PER_POINT_OF_TYPE
  const box = character.trim() === '' ? { left: at.x, right: at.x, top: at.y, bottom: at.y } : ink
  return (
    box.left >= room.x - slack &&
    box.top >= room.y - slack &&
    box.right <= room.x + room.width + slack &&
    box.bottom <= room.y + room.height + slack
  )
}

const DARK = 250

/** How many pixels are inked outside every room, a pixel's blur allowed. */
export function inkOutside(raster: Raster, rooms: readonly Cell[], dotsPerInch: number): number {
  const { width, height } = raster
  const dark = new Uint8Array(width * height)
  for (let pixel = 0; pixel < dark.length; pixel++) {
    if ((raster.data[pixel * 4] ?? 255) < DARK) dark[pixel] = 1
  }
  const perMm = dotsPerInch / 25.4
  for (const room of rooms) {
    const left = Math.floor(room.x * perMm) - 1
    const right = Math.ceil((room.x + room.width) * perMm) + 1
    for (let y = Math.floor(room.y * perMm) - 1; y <= Math.ceil((room.y + room.height) * perMm); y++) {
      dark.fill(0, y * width + left, y * width + right)
    }
  }
  return dark.reduce((outside, pixel) => outside + pixel, 0)
}
