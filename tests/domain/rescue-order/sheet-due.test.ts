import { expect, it } from 'vitest'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'
import { fireSheetDue } from '../../../db/domain/rescue-order/sheet-due.ts'

it('is printed once a season: never yet, or for an earlier one, is due', () => {
  const due = (last: string | null, today: string) =>
    fireSheetDue(last === null ? null : isoDate(last), isoDate(today), '04-15')
  expect(due(null, '2026-03-14')).toBe(true)
  expect(due('2026-03-14', '2026-05-01')).toBe(false)
  expect(due('2026-03-14', '2026-07-01')).toBe(true)
  expect(due('2026-07-01', '2027-03-14')).toBe(false)
  expect(due('2024-07-01', '2025-07-01')).toBe(true)
})
