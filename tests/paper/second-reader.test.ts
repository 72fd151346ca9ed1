import { expect, test } from 'vitest'
import { ShippedSheet } from '../../db/contract/paper-operations.ts'
import { cellsOf, inkOutside, inkRoomsOf } from '../builders/labels-read-back.ts'
import { bare, POISONOUS, packet, print, TREATED } from '../builders/packets.ts'
import { findPoppler } from '../builders/poppler.ts'
import { partOf, readCodes } from '../builders/read-codes.ts'

const poppler = findPoppler()
const packets = [
  packet({ variety: 'Žlutý hrášek', lotNumber: 'HL26-0001-A', cautions: [TREATED] }),
  packet({ crop: 'Κολοκύθι', variety: 'Στρογγυλό της γιαγιάς', lotNumber: 'HL26-0002-A' }),
  packet({ crop: 'Огурец', variety: 'Неженский', lotNumber: 'HL26-0003-A', cautions: [POISONOUS] }),
  packet({ variety: 'Winter Butterhead of the Upper Quill Valley '.repeat(4), lotNumber: 'HL26-0004-A' }),
]

/**
 * The same claims by a reader that shares nothing with the first. Without Poppler there is nothing to run here, which
 * the first line of its output says; the checks with PDFium run everywhere.
 */
if (poppler) {
  test.each(ShippedSheet.options)(
    'Poppler reads every word on %s inside its label, and its code',
    async (sheet) => {
      const { bytes } = await print(packets, { sheet, startAt: 3 })
      const cells = cellsOf(sheet)
      const read = new Map<number, string>()
      for (const word of poppler.words(bytes)) {
        const position = cells.findIndex(
          (cell) =>
            word.left >= cell.x &&
            word.right <= cell.x + cell.width &&
            word.top >= cell.y &&
            word.bottom <= cell.y + cell.height,
        )
        expect(position, `'${word.text}' stands in no label`).toBeGreaterThanOrEqual(2)
        read.set(position, (read.get(position) ?? '') + word.text)
      }
      expect([...read.keys()].toSorted((a, b) => a - b)).toEqual([2, 3, 4, 5])
      packets.slice(0, 3).forEach((label, index) => {
        expect(bare(read.get(index + 2) ?? '')).toContain(bare(label.variety))
        expect(bare(read.get(index + 2) ?? '')).toContain(bare(label.lotNumber))
      })
      const page = poppler.raster(bytes, 0, 300)
      expect(inkOutside(page, inkRoomsOf(sheet), 300)).toBe(0)
      const codes: string[] = []
      for (const cell of cells.slice(2, 6)) {
        const found = await readCodes(partOf(page, cell, 300))
        codes.push(...found.map((code) => code.text))
      }
      expect(codes).toEqual(packets.map((label) => label.scanCode))
    },
  )
} else {
  test('Poppler is not on this machine: its checks of the labels were not run', () => {
    expect(poppler).toBeNull()
  })
}
