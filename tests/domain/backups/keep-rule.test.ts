import fc from 'fast-check'
import { expect, test } from 'vitest'
import { backupsToDrop, type DatedBackup } from '../../../db/domain/backups/keep-rule.ts'
import { addDays } from '../../../db/domain/dates/day-arithmetic.ts'
import { isoDate } from '../../../db/domain/dates/iso-date.ts'

const NO_LIMIT = Number.MAX_SAFE_INTEGER
const routine = (at: string, bytes = 1): DatedBackup => ({
  ...{ at, bytes, latestEntry: Date.parse(at) / 1_000 },
  routine: true,
})

function kept(backups: readonly DatedBackup[], limit = NO_LIMIT): string[] {
  const dropped = new Set(backupsToDrop(backups, limit))
  return backups.filter((backup) => !dropped.has(backup)).map(({ at }) => at.slice(0, 10))
}

/** Three backups on every day of two years. */
const everyDay = Array.from({ length: 730 }, (_, day) =>
  ['08', '12', '17'].map((hour) => routine(`${addDays(isoDate('2024-01-01'), day)}T${hour}:00:00.000Z`)),
).flat()

test('of three a day for two years it keeps the newest, then days, weeks and months', () => {
  const days = kept(everyDay)
  expect(days.slice(-10)).toEqual(everyDay.slice(-10).map(({ at }) => at.slice(0, 10)))
  // The days before the newest ten, then the Sundays that end a week, then the last day of each month.
  expect([...new Set(days)]).toEqual([
    '2025-01-31',
    '2025-02-28',
    '2025-03-31',
    '2025-04-30',
    '2025-05-31',
    '2025-06-30',
    '2025-07-31',
    '2025-08-31',
    '2025-09-30',
    '2025-10-31',
    '2025-11-30',
    '2025-12-14',
    '2025-12-21',
    '2025-12-24',
    '2025-12-25',
    '2025-12-26',
    '2025-12-27',
    '2025-12-28',
    '2025-12-29',
    '2025-12-30',
  ])
})

test('a drawer opened once a month keeps a year and more', () => {
  const monthly = Array.from({ length: 24 }, (_, month) =>
    routine(`20${24 + Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}-05T10:00:00.000Z`),
  )
  expect(kept(monthly)).toHaveLength(12)
})

test('what was asked for stays, until the size is used up, and the three newest always', () => {
  const asked = { at: '2020-01-01T10:00:00.000Z', bytes: 50, latestEntry: 1, routine: false }
  const newer = Array.from({ length: 8 }, (_, day) => routine(`2024-05-0${day + 1}T10:00:00.000Z`, 10))
  expect(kept([asked, ...newer])).toHaveLength(9)
  expect(kept([asked, ...newer], 100)).toEqual([
    '2020-01-01',
    ...newer.slice(3).map(({ at }) => at.slice(0, 10)),
  ])
  expect(kept([asked, ...newer], 1)).toEqual(['2024-05-06', '2024-05-07', '2024-05-08'])
})

test('it drops only what it was given, keeps within the size, and has nothing more to drop afterwards', () => {
  const backup = fc.record({
    at: fc
      .date({ min: new Date('2000-01-01'), max: new Date('2030-01-01'), noInvalidDate: true })
      .map((date) => date.toISOString()),
    latestEntry: fc.nat(40),
    bytes: fc.integer({ min: 1, max: 100 }),
    routine: fc.boolean(),
  })
  fc.assert(
    fc.property(fc.uniqueArray(backup, { selector: ({ at }) => at }), fc.nat(2_000), (backups, limit) => {
      const dropped = new Set<DatedBackup>(backupsToDrop(backups, limit))
      const left = backups.filter((one) => !dropped.has(one))
      expect(left.length).toBeGreaterThanOrEqual(Math.min(3, backups.length))
      const most = backups.map(({ latestEntry }) => latestEntry).toSorted((a, b) => b - a)
      expect(
        left
          .map(({ latestEntry }) => latestEntry)
          .toSorted((a, b) => b - a)
          .slice(0, 3),
        'what holds most stays, whatever the clock said',
      ).toEqual(most.slice(0, 3))
      if (left.length > 3) expect(left.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThanOrEqual(limit)
      expect(backupsToDrop(left, limit)).toEqual([])
    }),
  )
})
