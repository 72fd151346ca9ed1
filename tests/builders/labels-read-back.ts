import type { LabelSheet } from '../../db/contract/paper-operations.ts'
import { type Cell, cellAt, inkBox, labelsOnSheet, SHEETS } from '../../db/paper/label-sheets.ts'
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

/** The rooms for ink of a sheet, moved by an offset. */
export function roomsOf(sheet: LabelSheet, [right, down]: readonly [number, number] = [0, 0]): Cell[] {
  return cellsOf(sheet).map((cell) => {
    const room = inkBox(SHEETS[sheet], cell)
    return { ...room, x: room.x + right, y: room.y + down }
  })
}

/** The labels of a sheet. */
export function cellsOf(sheet: LabelSheet): Cell[] {
  const geometry = SHEETS[sheet]
  return Array.from({ length: labelsOnSheet(geometry) }, (_, index) => cellAt(geometry, index))
}

/** Sorts the characters of a PDF into the labels they stand in, and tells which stand in none. */
export function labelsReadBack(pdf: ReadPdf, sheet: LabelSheet, offset: readonly [number, number] = [0, 0]) {
  const rooms = roomsOf(sheet, offset)
  const astray: ReadCharacter[] = []
  const labels: ReadLabel[] = []
  pdf.pages.forEach((page, pageIndex) => {
    const found = new Map<number, ReadCharacter[]>()
    for (const character of page.characters) {
      const position = rooms.findIndex((room) => holds(room, character))
      if (position < 0) astray.push(character)
      else found.set(position, [...(found.get(position) ?? []), character])
    }
    for (const [position, characters] of [...found].toSorted(([a], [b]) => a - b)) {
      const text = characters.map((read) => read.character).join('')
      labels.push({ page: pageIndex, position, room: rooms[position] as Cell, characters, text })
    }
  })
  return { labels, astray }
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
  const allowed = new Uint8Array(raster.width * raster.height)
  const perMm = dotsPerInch / 25.4
  for (const room of rooms) {
    const left = Math.floor(room.x * perMm) - 1
    const right = Math.ceil((room.x + room.width) * perMm) + 1
    for (let y = Math.floor(room.y * perMm) - 1; y <= Math.ceil((room.y + room.height) * perMm); y++) {
      allowed.fill(1, y * raster.width + left, y * raster.width + right)
    }
  }
  let outside = 0
  for (let pixel = 0; pixel < allowed.length; pixel++) {
    if ((raster.data[pixel * 4] ?? 255) < DARK && allowed[pixel] === 0) outside++
  }
  return outside
}
