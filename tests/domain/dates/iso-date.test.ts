import fc from 'fast-check'
import { expect, test } from 'vitest'
import { isIsoDate, isoDate, yearOf } from '../../../db/domain/dates/iso-date.ts'

test.each(['2026-03-14', '2024-02-29', '2000-02-29', '1000-01-01', '9999-12-31', '2026-04-30'])(
  '%s is a date',
  (text) => {
    expect(isoDate(text)).toBe(text)
  },
)

test.each([
  ...['2026-02-29', '1900-02-29', '2026-04-31', '2026-13-01', '2026-00-10', '2026-01-00', '2026-01-32'],
  ...[
    '0999-01-01',
    '10000-01-01',
    '2026-3-14',
    '26-03-14',
    '14-03-2026',
    '2026/03/14',
    '2026-03-14T00:00',
    '',
  ],
  ...['2026-03-14\n', ' 2026-03-14', '２０２６-03-14'],
])('%j is not', (text) => {
  expect(isIsoDate(text)).toBe(false)
  expect(() => isoDate(text)).toThrow(RangeError)
})

test('it agrees with the calendar of the machine on every day and every near miss', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1_000, max: 9_999 }), fc.nat(13), fc.nat(32), (year, month, day) => {
      const pad = (value: number) => String(value).padStart(2, '0')
      const calendar = new Date(Date.UTC(year, month - 1, day))
      const exists = calendar.getUTCMonth() === month - 1 && calendar.getUTCDate() === day && month > 0
      expect(isIsoDate(`${year}-${pad(month)}-${pad(day)}`)).toBe(exists)
    }),
    { numRuns: 2_000 },
  )
})

test('the year of a date', () => {
  expect(yearOf(isoDate('2026-03-14'))).toBe(2026)
})
