import type { ClimateReading } from '../domain/climate/reading.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { climateBatch, climateReading, placeTerms } from '../schema/climate-tables.ts'
import { crop, storagePlace } from '../schema/reference-tables.ts'
import { lot } from '../schema/stock-tables.ts'
import { type Columns, columns, expression, pick, type RowOf, select, selectValue } from './columns.ts'
import { notUndone } from './measurements.ts'
import { prepared } from './prepared.ts'
import { insertRow } from './rows.ts'
import { JOIN_SEED, SEED_NAMES } from './seed-names.ts'

const TERMS = columns(pick(placeTerms, 'placeId', 'aim', 'highestCc', 'highestPm', 'roundDays'))

/** What a place is meant for, as the keeper said last. */
export type TermsRow = RowOf<typeof TERMS>

/** The terms in force of every place that has any. */
export function termsOfPlaces(sqlite: Sqlite): TermsRow[] {
  return select(
    sqlite,
    TERMS,
    (list) => `SELECT ${list} FROM place_terms WHERE id IN (
       SELECT max(id) FROM place_terms WHERE ${notUndone('place_terms')} GROUP BY place_id)`,
  ).all()
}

const LATEST = columns({
  placeId: expression<number>('read.place_id'),
  at: expression<string>(`(SELECT at FROM climate_reading WHERE climate_reading.place_id = read.place_id
    AND batch_id IN (SELECT id FROM batch) ORDER BY at DESC LIMIT 1)`),
})

/** The minute of the latest reading of every place that has any. */
export function latestReadings(sqlite: Sqlite) {
  return select(
    sqlite,
    LATEST,
    (list) => `WITH batch AS (SELECT id, place_id FROM climate_batch WHERE ${notUndone('climate_batch')}),
       read AS (SELECT DISTINCT place_id FROM batch)
     SELECT ${list} FROM read`,
  ).all()
}

const READING: Columns<ClimateReading> = columns(pick(climateReading, 'at', 'temperatureCc', 'humidityPm'))

/** Every reading of a place itself that counts, in order of time. `from` and `until` are days; `until` is left out. */
export function readingsOfPlace(
  sqlite: Sqlite,
  placeId: number,
  from = '',
  until = '9999-12-31',
): ClimateReading[] {
  return select(
    sqlite,
    READING,
    (list) => `SELECT ${list} FROM climate_reading
     WHERE place_id = ? AND at >= ? AND at < ? AND batch_id IN (
       SELECT id FROM climate_batch WHERE climate_batch.place_id = ? AND ${notUndone('climate_batch')})
     ORDER BY at`,
  ).all(placeId, from, until, placeId)
}

const OF_BATCH =
  'FROM climate_reading WHERE place_id = climate_batch.place_id AND batch_id = climate_batch.id'
const BATCH = columns({
  ...pick(climateBatch, 'entryId', 'fileName', 'readings', 'leftOut', 'note'),
  first: expression<string>(`(SELECT min(at) ${OF_BATCH})`),
  last: expression<string>(`(SELECT max(at) ${OF_BATCH})`),
})

/** Readings that came in together and count, of a place, latest first. */
export function batchesOfPlace(sqlite: Sqlite, placeId: number, limit: number) {
  return select(
    sqlite,
    BATCH,
    (list) => `SELECT ${list}
     FROM climate_batch WHERE place_id = ? AND ${notUndone('climate_batch')} ORDER BY id DESC LIMIT ?`,
  ).all(placeId, limit)
}

const STORED_LOT = columns({
  lotId: lot.id,
  lotNumber: lot.number,
  ...SEED_NAMES,
  ...pick(crop, 'family', 'countedUnit'),
  place: storagePlace.path,
  quarantined: expression<0 | 1>('lot.quarantine_reason IS NOT NULL'),
  highPercent: expression<
    number | null
  >(`(SELECT high_percent FROM seed_moisture WHERE lot_id = lot.id AND ${notUndone('seed_moisture')}
      ORDER BY measured_on DESC, id DESC LIMIT 1)`),
})

/** Lots with seed in a place and inside it, by number, with what they are kept in and how moist they were found. */
export function lotsInPlace(sqlite: Sqlite, placeId: number, limit: number) {
  return select(
    sqlite,
    STORED_LOT,
    (list) => `WITH around AS (SELECT id, path FROM storage_place WHERE id = ?)
     SELECT ${list}
     FROM around
       JOIN storage_place ON storage_place.id = around.id
         OR substr(storage_place.path, 1, length(around.path) + 3) = around.path || ' / '
       JOIN lot ON lot.place_id = storage_place.id AND lot.holds_seed = 1 ${JOIN_SEED}
     ORDER BY lot.number LIMIT ?`,
  ).all(placeId, limit)
}

/** Whether a place is a freezer or stands in one. */
export function freezes(sqlite: Sqlite, placeId: number): boolean {
  const found = prepared(
    sqlite,
    `WITH RECURSIVE around (id, parent_id, kind) AS (
       SELECT id, parent_id, kind FROM storage_place WHERE id = ?
       UNION ALL
       SELECT storage_place.id, storage_place.parent_id, storage_place.kind
       FROM storage_place JOIN around ON storage_place.id = around.parent_id)
     SELECT 1 FROM around WHERE kind = 'freezer'`,
  ).get(placeId)
  return found !== undefined
}

/** The plant family of a lot. */
export function familyOfLot(sqlite: Sqlite, lotId: number): string {
  const family = selectValue(
    sqlite,
    crop.family,
    (value) => `SELECT ${value} FROM lot ${JOIN_SEED} WHERE lot.id = ?`,
  )
  return family.get(lotId) ?? ''
}

/** The minutes of a span, both ends counted, of which a place has a reading that counts. */
export function minutesRead(
  sqlite: Sqlite,
  placeId: number,
  from: string,
  until: string,
): ReadonlySet<string> {
  const minutes = selectValue(
    sqlite,
    climateReading.at,
    (at) => `SELECT ${at} FROM climate_reading WHERE place_id = ? AND at >= ? AND at <= ? AND batch_id IN (
       SELECT id FROM climate_batch WHERE climate_batch.place_id = ? AND ${notUndone('climate_batch')})`,
  ).all(placeId, from, until, placeId)
  return new Set(minutes)
}

const FILE = columns({ fileName: climateBatch.fileName, place: storagePlace.path })

/** The file of this digest that counts, by the name it came in under; undefined where there is none. */
export function batchOfFile(sqlite: Sqlite, digest: string) {
  return select(
    sqlite,
    FILE,
    (
      list,
    ) => `SELECT ${list} FROM climate_batch JOIN storage_place ON storage_place.id = climate_batch.place_id
     WHERE digest = ? AND ${notUndone('climate_batch')}`,
  ).get(digest)
}

/** Writes many readings of one batch; they must be in order of time, or it is slow. */
export function writeReadings(
  sqlite: Sqlite,
  placeId: number,
  batchId: number,
  readings: readonly ClimateReading[],
): void {
  for (const reading of readings) insertRow(sqlite, climateReading, { placeId, batchId, ...reading })
}
