import { expect, test } from 'vitest'
import type { Cell } from '../../db/paper/packets/label-sheets.ts'
import { packetParts } from '../../db/paper/packets/sheet-marks.ts'
import { SHEETS } from '../../db/paper/packets/shipped-sheets.ts'
import { cellsOf, inkOutside, inkRoomsOf } from '../builders/labels-read-back.ts'
import { bare, POISONOUS, packet, print, TREATED } from '../builders/packets.ts'
import { findPoppler, type PopplerWord } from '../builders/poppler.ts'
import { partOf, readCodes } from '../builders/read-codes.ts'
import { SHEETS_TRIED } from '../builders/sheets-tried.ts'

const poppler = findPoppler()
const packets = [
  packet({ variety: 'Žlutý hrášek', lotNumber: 'HL26-0001-A', cautions: [TREATED] }),
  packet({ crop: 'Κολοκύθι', variety: 'Στρογγυλό της γιαγιάς', lotNumber: 'HL26-0002-A' }),
  packet({ crop: 'Огурец', variety: 'Неженский', lotNumber: 'HL26-0003-A', cautions: [POISONOUS] }),
  packet({ variety: 'Winter Butterhead of the Upper Quill Valley '.repeat(4), lotNumber: 'HL26-0004-A' }),
]

function holdsWord(room: Cell, word: PopplerWord): boolean {
  return (
    word.left >= room.x &&
    word.right <= room.x + room.width &&
    word.top >= room.y &&
    word.bottom <= room.y + room.height
  )
}

/**
 * The same claims by a reader that shares nothing with the first. Without Poppler there is nothing to run here, which
 * the first line of its output says; the checks with PDFium run everywhere.
 */
if (poppler) {
  test.each(SHEETS_TRIED)('Poppler reads every word on %s inside its label, and its code', async (sheet) => {
    const cells = cellsOf(sheet)
    const folded = SHEETS[sheet].folded ?? false
    const partsOf = (_: Cell, at: number): Cell[] => Object.values(packetParts(SHEETS[sheet], at))
    const parts = folded ? cells.flatMap(partsOf) : []
    const startAt = Math.min(3, cells.length)
    // The label's place counted through all pages.
    const places = packets.map((_, index) => startAt - 1 + index)
    const { bytes } = await print(packets, { sheet, startAt })
    const read = new Map<number, string>()
    for (const word of poppler.words(bytes)) {
      const position = cells.findIndex((cell) => holdsWord(cell, word))
      if (position < 0 && parts.some((part) => holdsWord(part, word))) continue
      expect(position, `'${word.text}' stands in no label`).toBeGreaterThanOrEqual(0)
      const place = word.page * cells.length + position
      read.set(place, (read.get(place) ?? '') + word.text)
    }
    expect([...read.keys()].toSorted((a, b) => a - b)).toEqual(places)
    packets.slice(0, 3).forEach((label, index) => {
      expect(bare(read.get(places[index] ?? 0) ?? '')).toContain(bare(label.variety))
      expect(bare(read.get(places[index] ?? 0) ?? '')).toContain(bare(label.lotNumber))
    })
    const codes: string[] = []
    for (const at of new Set(places.map((place) => Math.floor(place / cells.length)))) {
      const page = poppler.raster(bytes, at, 300)
      expect(inkOutside(page, inkRoomsOf(sheet), 300)).toBe(0)
      for (const place of places.filter((one) => Math.floor(one / cells.length) === at)) {
        const found = await readCodes(partOf(page, cells[place % cells.length] as Cell, 300))
        codes.push(...found.map((code) => code.text))
      }
    }
    expect(codes).toEqual(packets.map((label) => label.scanCode))
  })
} else {
  test('Poppler is not on this machine: its checks of the labels were not run', () => {
    expect(poppler).toBeNull()
  })
}
