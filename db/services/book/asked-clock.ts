import { message } from '../../messages/message.ts'
import { prepared } from '../../queries/prepared.ts'
import { askOnce } from './ask-once.ts'
import type { Writing } from './context.ts'

const DAY_MS = 86_400_000

/** As far as travelling between time zones can move a day back. */
const MAY_GO_BACK_MS = 2 * DAY_MS

/** Longer than a library rests between two entries. */
const MAY_GO_AHEAD_MS = 550 * DAY_MS

/**
 * Asks once whether the clock is right where it stands before the latest entry, or far after it: what is written now gets
 * its day, and numbers that are never given again get its year. The demonstration is years old on purpose.
 */
export function askAboutClock(writing: Writing): void {
  const latest = prepared(
    writing.sqlite,
    `SELECT entry.recorded_at FROM entry, collection WHERE entry.id < ? AND collection.kind = 'own' ORDER BY entry.id DESC LIMIT 1`,
  )
  const before = latest.pluck().get(writing.entryId) as string | undefined
  if (before === undefined) return
  const ahead = writing.now.getTime() - Date.parse(before)
  if (!(ahead < -MAY_GO_BACK_MS || ahead > MAY_GO_AHEAD_MS)) return
  const told = message(ahead < 0 ? 'book.clock-behind' : 'book.clock-ahead', {
    today: { day: writing.today },
    latest: { day: before.slice(0, 10) },
  })
  askOnce(writing, `today ${writing.today}`, told, null)
}
