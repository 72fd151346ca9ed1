import type { Result } from '../../contract/contract.ts'
import { isoDate, yearOf } from '../../domain/dates/iso-date.ts'
import { message } from '../../messages/message.ts'
import { donorsNotWrittenTo, lettersPrintedAt, waitingItems } from '../../queries/tray-rows.ts'
import type { Reading } from '../book/context.ts'
import { shownItem } from '../book/tray.ts'
import { nextOnEachSheet, printersKnown } from './printed.ts'

/** How far back a gift is looked for whose donor gets no letter, days. */
const LATELY_DAYS = 30
const DAY_MS = 86_400_000

/** What waits to be printed, by kind, and what is remembered of sheets and printers. */
export function listTray(reading: Reading): Result<'tray.list'> {
  const waiting = waitingItems(reading.sqlite)
  const kinds = ['label', 'letter', 'slip'] as const
  const since = new Date(Date.parse(`${reading.today}T00:00:00Z`) - LATELY_DAYS * DAY_MS)
  return {
    groups: kinds
      .map((kind) => ({ kind, items: waiting.filter((row) => row.kind === kind).map(shownItem) }))
      .filter(({ items }) => items.length > 0),
    sheets: nextOnEachSheet(reading),
    printers: printersKnown(reading),
    lettersSince: isoDate(lettersPrintedAt(reading.sqlite)?.slice(0, 10) ?? `${yearOf(reading.today)}-01-01`),
    leftOut: donorsNotWrittenTo(reading.sqlite, since.toISOString().slice(0, 10)).map((donor) => ({
      personId: donor.id,
      name: donor.name,
      sentence: message('letters.not-agreed', { name: donor.name }),
    })),
  }
}
