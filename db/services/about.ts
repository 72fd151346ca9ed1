import type { Value } from '../contract/contract.ts'
import { inSyncedFolder } from '../migrations/file-place.ts'
import { prepared } from '../queries/prepared.ts'
import type { Reading } from './context.ts'
import { forecastsLeft } from './keep-forecasts.ts'
import { settingsOf, settingsShown } from './settings.ts'

export function aboutCollection(reading: Reading): Value<'collection.about'> {
  const count = (table: string) =>
    Number(prepared(reading.sqlite, `SELECT count(*) FROM ${table}`).pluck().get())
  const synced = inSyncedFolder(reading.collection.file)
  return {
    kind: settingsOf(reading).kind,
    file: reading.collection.file,
    today: reading.today,
    ...settingsShown(reading),
    accessions: count('accession'),
    lots: count('lot'),
    people: count('person WHERE joined_into_id IS NULL'),
    movements: count('movement'),
    warnings:
      synced === null
        ? []
        : [
            `The collection lies in ${synced}. Such folders can spoil a file that is being written: keep it on this computer’s own disk, and put backups there instead.`,
          ],
  }
}

export function revisionOf(reading: Reading): Value<'collection.revision'> {
  return {
    revision: Number(prepared(reading.sqlite, 'SELECT max(id) FROM entry').pluck().get()),
    forecastsLeft: forecastsLeft(reading).left,
  }
}
