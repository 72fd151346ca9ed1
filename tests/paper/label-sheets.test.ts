import { describe, expect, test } from 'vitest'
import { ShippedSheet } from '../../db/contract/print-operations.ts'
import { cellAt, inkBox, labelsOnSheet, sheetFault } from '../../db/paper/packets/label-sheets.ts'
import { SHEETS } from '../../db/paper/packets/shipped-sheets.ts'
import { saidInEnglish } from '../builders/in-english.ts'

describe('label sheets', () => {
  test('every sheet of the contract has its measurements', () => {
    expect(Object.keys(SHEETS).toSorted()).toEqual([...ShippedSheet.options].toSorted())
  })

  test.each(ShippedSheet.options)('%s adds up to its page within 0.3 mm, both ways', (name) => {
    const sheet = SHEETS[name]
    if (sheet.folded) return
    const across = 2 * sheet.leftMm + (sheet.columns - 1) * sheet.pitchXMm + sheet.widthMm
    const down = 2 * sheet.topMm + (sheet.rows - 1) * sheet.pitchYMm + sheet.heightMm
    expect(Math.abs(across - sheet.pageMm.width)).toBeLessThanOrEqual(0.3)
    expect(Math.abs(down - sheet.pageMm.height)).toBeLessThanOrEqual(0.3)
  })

  test.each(ShippedSheet.options)('%s holds as many labels as its name says, none over another', (name) => {
    const sheet = SHEETS[name]
    const called = /^(?:a4|letter)-(\d+)$/.exec(name)?.[1]
    if (called !== undefined) {
      expect(labelsOnSheet(sheet)).toBe(Number(called))
      expect(saidInEnglish(sheet.name)).toContain(`${labelsOnSheet(sheet)} labels`)
    }
    expect(sheetFault(sheet)).toBeNull()
    expect(sheet.pitchXMm).toBeGreaterThanOrEqual(sheet.widthMm)
    expect(sheet.pitchYMm).toBeGreaterThanOrEqual(sheet.heightMm)
  })

  test.each(ShippedSheet.options)('%s keeps ink 2 mm inside a label and 5 mm from the page', (name) => {
    const sheet = SHEETS[name]
    for (let index = 0; index < labelsOnSheet(sheet); index++) {
      const cell = cellAt(sheet, index)
      const room = inkBox(sheet, cell)
      expect(room.x - cell.x).toBeGreaterThanOrEqual(2 - 1e-9)
      expect(room.y - cell.y).toBeGreaterThanOrEqual(2 - 1e-9)
      expect(cell.x + cell.width - room.x - room.width).toBeGreaterThanOrEqual(2 - 1e-9)
      expect(cell.y + cell.height - room.y - room.height).toBeGreaterThanOrEqual(2 - 1e-9)
      expect(room.x).toBeGreaterThanOrEqual(5)
      expect(room.x + room.width).toBeLessThanOrEqual(sheet.pageMm.width - 5)
    }
  })

  test('a sheet without a margin of its own keeps ink 5 mm from the edge of the page', () => {
    const edgeToEdge = { ...SHEETS['a4-24'], leftMm: 0, topMm: 0, widthMm: 70, pitchXMm: 70 }
    const first = inkBox(edgeToEdge, cellAt(edgeToEdge, 0))
    const third = inkBox(edgeToEdge, cellAt(edgeToEdge, 2))
    expect([first.x, first.y]).toEqual([5, 5])
    expect(third.x + third.width).toBe(205)
  })

  test('labels are counted along the rows', () => {
    const sheet = SHEETS['a4-21']
    expect(cellAt(sheet, 0)).toMatchObject({ x: 7.2, y: 15.15 })
    expect(cellAt(sheet, 1).x).toBeCloseTo(73.2)
    expect(cellAt(sheet, 3).y).toBeCloseTo(53.25)
  })
})
