import type { PlaceAim } from '../domain/climate/limits.ts'
import type { ClimateReading } from '../domain/climate/reading.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { notUndone } from './measurements.ts'
import { prepared } from './prepared.ts'

/** What a place is meant for, as the keeper said last. */
export interface TermsRow {
  readonly placeId: number
  readonly aim: PlaceAim
  readonly highestCc: number | null
  readonly highestPm: number | null
  readonly roundDays: number | null
}

/** The terms in force of every place that has any. */
export function termsOfPlaces(sqlite: Sqlite): TermsRow[] {
  return prepared(
    sqlite,
    `SELECT place_id AS placeId, aim, highest_cc AS highestCc, highest_pm AS highestPm, round_days AS roundDays
     FROM place_terms WHERE id IN (
       SELECT max(id) FROM place_terms WHERE ${notUndone('place_terms')} GROUP BY place_id)`,
  ).all() as TermsRow[]
}

/** The minute of the latest reading of every place that has any. */
export function latestReadings(sqlite: Sqlite): { placeId: number; at: string }[] {
  return prepared(
    sqlite,
    `WITH batch AS (SELECT id, place_id FROM climate_batch WHERE ${notUndone('climate_batch')}),
       read AS (SELECT DISTINCT place_id FROM batch)
     SELECT place_id AS placeId, (
       SELECT at FROM climate_reading WHERE climate_reading.place_id = read.place_id
         AND batch_id IN (SELECT id FROM batch) ORDER BY at DESC LIMIT 1) AS at
     FROM read`,
  ).all() as { placeId: number; at: string }[]
}

/** Every reading of a place itself that counts, in order of time. `from` and `until` are days; `until` is left out. */
export function readingsOfPlace(
  sqlite: Sqlite,
  placeId: number,
  from = '',
  until = '9999-12-31',
): ClimateReading[] {
  return prepared(
    sqlite,
    `SELECT at, temperature_cc AS temperatureCc, humidity_pm AS humidityPm FROM climate_reading
     WHERE place_id = ? AND at >= ? AND at < ? AND batch_id IN (
       SELECT id FROM climate_batch WHERE climate_batch.place_id = ? AND ${notUndone('climate_batch')})
     ORDER BY at`,
  ).all(placeId, from, until, placeId) as ClimateReading[]
}

/** Readings that came in together. */
export interface BatchRow {
  readonly entryId: number
  readonly fileName: string | null
  readonly readings: number
  readonly leftOut: number
  readonly note: string
  readonly first: string
  readonly last: string
}

/** The batches of a place that count, latest first. */
export function batchesOfPlace(sqlite: Sqlite, placeId: number, limit: number): BatchRow[] {
  return prepared(
    sqlite,
    `SELECT entry_id AS entryId, file_name AS fileName, readings, left_out AS leftOut, note,
       (SELECT min(at) FROM climate_reading WHERE place_id = climate_batch.place_id AND batch_id = climate_batch.id) AS first,
       (SELECT max(at) FROM climate_reading WHERE place_id = climate_batch.place_id AND batch_id = climate_batch.id) AS last
     FROM climate_batch WHERE place_id = ? AND ${notUndone('climate_batch')} ORDER BY id DESC LIMIT ?`,
  ).all(placeId, limit) as BatchRow[]
}

/** A lot that lies in a place or in something inside it, with what it is kept in and how moist it was found. */
export interface StoredLotRow {
  readonly lotId: number
  readonly lotNumber: string
  readonly variety: string
  readonly crop: string
  readonly family: string
  readonly place: string
  readonly quarantined: 0 | 1
  readonly highPercent: number | null
}

/** Lots with seed in a place and inside it, by number. */
export function lotsInPlace(sqlite: Sqlite, placeId: number, limit: number): StoredLotRow[] {
  return prepared(
    sqlite,
    `WITH around AS (SELECT id, path FROM storage_place WHERE id = ?)
     SELECT lot.id AS lotId, lot.number AS lotNumber, variety.name AS variety, crop.common_name AS crop, crop.family,
       storage_place.path AS place, lot.quarantine_reason IS NOT NULL AS quarantined,
       (SELECT high_percent FROM seed_moisture WHERE lot_id = lot.id AND ${notUndone('seed_moisture')}
        ORDER BY measured_on DESC, id DESC LIMIT 1) AS highPercent
     FROM around
       JOIN storage_place ON storage_place.id = around.id
         OR substr(storage_place.path, 1, length(around.path) + 3) = around.path || ' / '
       JOIN lot ON lot.place_id = storage_place.id AND lot.holds_seed = 1
       JOIN accession ON accession.id = lot.accession_id JOIN variety ON variety.id = accession.variety_id
       JOIN crop ON crop.id = variety.crop_id
     ORDER BY lot.number LIMIT ?`,
  ).all(placeId, limit) as StoredLotRow[]
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
  return prepared(
    sqlite,
    `SELECT crop.family FROM lot JOIN accession ON accession.id = lot.accession_id
       JOIN variety ON variety.id = accession.variety_id JOIN crop ON crop.id = variety.crop_id WHERE lot.id = ?`,
  )
    .pluck()
    .get(lotId) as string
}

/** The minutes of a span, both ends counted, of which a place has a reading that counts. */
export function minutesRead(
  sqlite: Sqlite,
  placeId: number,
  from: string,
  until: string,
): ReadonlySet<string> {
  const minutes = prepared(
    sqlite,
    `SELECT at FROM climate_reading WHERE place_id = ? AND at >= ? AND at <= ? AND batch_id IN (
       SELECT id FROM climate_batch WHERE climate_batch.place_id = ? AND ${notUndone('climate_batch')})`,
  )
    .pluck()
    .all(placeId, from, until, placeId) as string[]
  return new Set(minutes)
}

/** The file of this digest that counts, by the name it came in under; null where there is none. */
export function batchOfFile(sqlite: Sqlite, digest: string): { fileName: string; place: string } | null {
  const row = prepared(
    sqlite,
    `SELECT file_name AS fileName, path AS place FROM climate_batch
       JOIN storage_place ON storage_place.id = climate_batch.place_id
     WHERE digest = ? AND ${notUndone('climate_batch')}`,
  ).get(digest) as { fileName: string; place: string } | undefined
  return row ?? null
}

/** Writes many readings of one batch; they must be in order of time, or it is slow. */
export function writeReadings(
  sqlite: Sqlite,
  placeId: number,
  batchId: number,
  readings: readonly ClimateReading[],
): void {
  const insert = prepared(
    sqlite,
    'INSERT INTO climate_reading (place_id, at, batch_id, temperature_cc, humidity_pm) VALUES (?, ?, ?, ?, ?)',
  )
  for (const { at, temperatureCc, humidityPm } of readings)
    insert.run(placeId, at, batchId, temperatureCc, humidityPm)
}
