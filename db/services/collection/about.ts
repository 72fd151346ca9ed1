import type { Result } from '../../contract/contract.ts'
import { type Message, message } from '../../messages/message.ts'
import { inSyncedFolder } from '../../migrations/file-place.ts'
import { prepared } from '../../queries/prepared.ts'
import type { Reading } from '../book/context.ts'
import { settingsOf, settingsShown } from '../book/settings.ts'
import { forecastsLeft } from '../forecast/save-forecasts.ts'

/** What is open, its settings, and how much it holds. */
export function aboutCollection(reading: Reading): Result<'collection.get'> {
  const count = (table: string) =>
    Number(prepared(reading.sqlite, `SELECT count(*) FROM ${table}`).pluck().get())
  return {
    kind: settingsOf(reading).kind,
    file: reading.collection.file,
    today: reading.today,
    ...settingsShown(reading),
    accessions: count('accession'),
    lots: count('lot'),
    people: count('person WHERE merged_into_id IS NULL'),
    movements: count('movement'),
    warnings: [...readOnly(reading), ...syncedFolder(reading), ...clockBehind(reading)],
  }
}

function readOnly({ collection }: Reading): Message[] {
  switch (collection.whyReadOnly?.code) {
    case undefined:
      return []
    case 'disk-full':
      return [message('collection.read-only-disk-full')]
    default:
      return [message('collection.read-only-here')]
  }
}

function syncedFolder({ collection }: Reading): Message[] {
  const folder = inSyncedFolder(collection.file)
  return folder === null ? [] : [message('collection.unsafe-folder', { folder })]
}

/** A clock may be put right by so much without a word, milliseconds. */
const CLOCK_LEEWAY_MS = 3_600_000

/** Says so where the clock stands before one of the latest entries: days typed as today would be wrong. */
function clockBehind({ sqlite, now }: Reading): Message[] {
  const latest = prepared(
    sqlite,
    'SELECT max(recorded_at) FROM (SELECT recorded_at FROM entry ORDER BY id DESC LIMIT 50)',
  )
    .pluck()
    .get() as string
  if (Date.parse(latest) - now.getTime() <= CLOCK_LEEWAY_MS) return []
  return [
    message('collection.clock-behind', {
      clock: { day: now.toISOString().slice(0, 10) },
      written: { day: latest.slice(0, 10) },
    }),
  ]
}

/** The number of the latest entry, and the forecasts to come. */
export function revisionOf(reading: Reading): Result<'collection.get-revision'> {
  return {
    revision: Number(prepared(reading.sqlite, 'SELECT max(id) FROM entry').pluck().get()),
    forecasts: forecastsLeft(reading),
  }
}
