import fc from 'fast-check'
import { expect, test } from 'vitest'
import { addDays, addYears, daysBetween } from '../../../db/domain/dates/day-arithmetic.ts'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'

const DAY_MS = 86_400_000
const date = fc
  .date({ min: new Date('1100-01-01'), max: new Date('9000-12-31'), noInvalidDate: true })
  .map((moment) => isoDate(moment.toISOString().slice(0, 10)))

test('days are added and counted as the calendar of the platform has them', () => {
  fc.assert(
    fc.property(date, fc.integer({ min: -30_000, max: 30_000 }), (from, days) => {
      const theirs = new Date(Date.parse(from) + days * DAY_MS).toISOString().slice(0, 10)
      expect(addDays(from, days)).toBe(theirs)
      expect(daysBetween(from, isoDate(theirs))).toBe(days)
    }),
  )
})

test.each([
  ['2024-02-29', 1, '2025-03-01'],
  ['2024-02-29', 4, '2028-02-29'],
  ['2026-11-26', 10, '2036-11-26'],
  ['2026-12-31', -1, '2025-12-31'],
])('%s and %s years is %s', (from, years, to) => {
  expect(addYears(isoDate(from), years)).toBe(to)
})
