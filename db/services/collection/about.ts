import type { Result } from '../../contract/contract.ts'
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

function readOnly({ collection }: Reading): string[] {
  switch (collection.whyReadOnly?.code) {
    case undefined:
      return []
    case 'disk-full':
      return [
        'The disk is full, so this collection is open for reading only: nothing you enter is kept. Make room on the disk, and start the app again.',
      ]
    default:
      return [
        'This collection may only be read where it lies: nothing you enter is kept. Move it to a folder where you may write, and start the app again.',
      ]
  }
}

function syncedFolder({ collection }: Reading): string[] {
  const synced = inSyncedFolder(collection.file)
  if (synced === null) return []
  return [
    `The collection lies in ${synced}. Such folders can spoil a file that is being written: keep it on this computer’s own disk, and put backups there instead.`,
  ]
}

/** A clock may be put right by so much without a word, milliseconds. */
const CLOCK_LEEWAY_MS = 3_600_000

/** Says so where the clock stands before one of the latest entries: days typed as today would be wrong. */
function clockBehind({ sqlite, now }: Reading): string[] {
  const latest = prepared(
    sqlite,
    'SELECT max(recorded_at) FROM (SELECT recorded_at FROM entry ORDER BY id DESC LIMIT 50)',
  )
    .pluck()
    .get() as string
  if (Date.parse(latest) - now.getTime() <= CLOCK_LEEWAY_MS) return []
  return [
    `This computer’s clock says ${now.toISOString().slice(0, 10)}, but the book was written in on ${latest.slice(0, 10)}. Set the clock right before you go on; nothing in the book is lost.`,
  ]
}

/** The number of the latest entry, and the forecasts to come. */
export function revisionOf(reading: Reading): Result<'collection.get-revision'> {
  return {
    revision: Number(prepared(reading.sqlite, 'SELECT max(id) FROM entry').pluck().get()),
    forecasts: forecastsLeft(reading),
  }
}
