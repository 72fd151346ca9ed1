import { describe, expect, test } from 'vitest'
import { LabelSheet } from '../../db/contract/paper-operations.ts'
import { cellAt, inkBox, labelsOnSheet, SHEETS } from '../../db/paper/label-sheets.ts'

describe('label sheets', () => {
  test('every sheet of the contract has its measurements', () => {
    expect(Object.keys(SHEETS).toSorted()).toEqual([...LabelSheet.options].toSorted())
  })

  test.each(LabelSheet.options)('%s adds up to its page within 0.3 mm, both ways', (name) => {
    const sheet = SHEETS[name]
    const across = 2 * sheet.leftMm + (sheet.columns - 1) * sheet.pitchXMm + sheet.widthMm
    const down = 2 * sheet.topMm + (sheet.rows - 1) * sheet.pitchYMm + sheet.heightMm
    expect(Math.abs(across - sheet.pageMm.width)).toBeLessThanOrEqual(0.3)
    expect(Math.abs(down - sheet.pageMm.height)).toBeLessThanOrEqual(0.3)
  })

  test.each(LabelSheet.options)('%s holds as many labels as its name says, none over another', (name) => {
    const sheet = SHEETS[name]
    expect(labelsOnSheet(sheet)).toBe(Number(name.split('-')[1]))
    expect(sheet.name).toContain(`${labelsOnSheet(sheet)} labels`)
    expect(sheet.pitchXMm).toBeGreaterThanOrEqual(sheet.widthMm)
    expect(sheet.pitchYMm).toBeGreaterThanOrEqual(sheet.heightMm)
  })

  test.each(LabelSheet.options)('%s keeps ink 2 mm inside a label and 5 mm from the page', (name) => {
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
