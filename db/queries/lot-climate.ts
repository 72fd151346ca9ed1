import type { Sqlite } from '../migrations/connection.ts'
import { notUndone } from './measurements.ts'
import { prepared } from './prepared.ts'

/** Where a lot lay: from a day on, up to but not including `until`, or until now where that is null. */
export interface Stay {
  readonly placeId: number
  readonly place: string
  readonly from: string
  readonly until: string | null
}

/** Where a lot has been since it is in the book, in order of time. Two moves on one day leave the later. */
export function staysOfLot(sqlite: Sqlite, lotId: number): Stay[] {
  return prepared(
    sqlite,
    `WITH stay AS (
       SELECT place_id, since, max(id) FROM lot_place
       WHERE lot_id = ? AND ${notUndone('lot_place')} GROUP BY since)
     SELECT place_id AS placeId, storage_place.path AS place, since AS "from",
       lead(since) OVER (ORDER BY since) AS until
     FROM stay JOIN storage_place ON storage_place.id = place_id ORDER BY since`,
  ).all(lotId) as Stay[]
}

/** SQL for the batches of a place, bound once, whose readings count. */
const STANDING_BATCHES = `SELECT id FROM climate_batch WHERE climate_batch.place_id = ? AND ${notUndone('climate_batch')}`

/**
 * The place whose readings hold for a place: itself, or the nearest around it that has any, but nothing outside the
 * nearest fridge or freezer, which has a climate of its own; null where none has. `kind`: as if the place were of that kind.
 */
export function placeWithReadings(sqlite: Sqlite, placeId: number, kind?: string): number | null {
  const id = prepared(
    sqlite,
    `WITH RECURSIVE around (id, parent_id, kind, steps) AS (
       SELECT id, parent_id, coalesce(?, kind), 0 FROM storage_place WHERE id = ?
       UNION ALL
       SELECT storage_place.id, storage_place.parent_id, storage_place.kind, steps + 1
       FROM storage_place JOIN around ON storage_place.id = around.parent_id
       WHERE around.kind NOT IN ('fridge', 'freezer'))
     SELECT id FROM around WHERE EXISTS (
       SELECT 1 FROM climate_batch WHERE place_id = around.id AND ${notUndone('climate_batch')})
     ORDER BY steps LIMIT 1`,
  )
    .pluck()
    .get(kind ?? null, placeId) as number | undefined
  return id ?? null
}

/**
 * The readings of a day or a month in one line: hundredths of a degree C, per mille of relative humidity.
 *
 * Humidity is null where no reading of that time had any.
 */
export interface ClimateSummary {
  /** 'YYYY-MM-DD' or 'YYYY-MM'. */
  readonly on: string
  readonly readings: number
  readonly meanCc: number
  readonly lowCc: number
  readonly highCc: number
  readonly meanPm: number | null
  readonly lowPm: number | null
  readonly highPm: number | null
}

const LETTERS_OF = { day: 10, month: 7 } as const

/**
 * The readings taken in a place itself, summed up by day or by month, in order of time.
 *
 * `from` and `until` are days; `until` itself is left out. Ask {@link placeWithReadings} first for a box in a fridge.
 */
export function climateOfPlace(
  sqlite: Sqlite,
  placeId: number,
  by: keyof typeof LETTERS_OF,
  from = '',
  until: string | null = null,
): ClimateSummary[] {
  return prepared(
    sqlite,
    `SELECT substr(at, 1, ${LETTERS_OF[by]}) AS "on", count(*) AS readings,
       avg(temperature_cc) AS meanCc, min(temperature_cc) AS lowCc, max(temperature_cc) AS highCc,
       avg(humidity_pm) AS meanPm, min(humidity_pm) AS lowPm, max(humidity_pm) AS highPm
     FROM climate_reading WHERE place_id = ? AND at >= ? AND at < ? AND batch_id IN (${STANDING_BATCHES})
     GROUP BY 1 ORDER BY 1`,
  ).all(placeId, from, until ?? '9999-12-31T24:00', placeId) as ClimateSummary[]
}

/** A stay of a lot with the climate that it had there, from whichever place around it has readings. */
export interface StayClimate extends Stay {
  readonly readingsFrom: number | null
  readonly climate: ClimateSummary[]
}

/** Where a lot has been and how warm and damp it was there, by day or by month. */
export function climateOfLot(sqlite: Sqlite, lotId: number, by: keyof typeof LETTERS_OF): StayClimate[] {
  return staysOfLot(sqlite, lotId).map((stay) => {
    const readingsFrom = placeWithReadings(sqlite, stay.placeId)
    const climate =
      readingsFrom === null ? [] : climateOfPlace(sqlite, readingsFrom, by, stay.from, stay.until)
    return { ...stay, readingsFrom, climate }
  })
}

/** What a lot is kept in. */
export interface ContainerRow {
  readonly kind: 'envelope' | 'bag' | 'jar' | 'can' | 'other'
  readonly airtight: 0 | 1
  readonly pest_proof: 0 | 1
  readonly since: string
  readonly note: string
}

/** The container a lot is in now, or null where nobody has said. */
export function containerOfLot(sqlite: Sqlite, lotId: number): ContainerRow | null {
  const row = prepared(
    sqlite,
    `SELECT kind, airtight, pest_proof, since, note FROM lot_container
     WHERE lot_id = ? AND ${notUndone('lot_container')} ORDER BY since DESC, id DESC LIMIT 1`,
  ).get(lotId) as ContainerRow | undefined
  return row ?? null
}

/** A measurement of a lot's moisture, percent of fresh weight. */
export interface MoistureRow {
  readonly measured_on: string
  readonly method: 'oven' | 'sealed-jar' | 'break-check' | 'meter'
  readonly percent: number
  readonly low_percent: number
  readonly high_percent: number
  readonly observed: string
  readonly note: string
}

/** Every standing moisture measurement of a lot, latest first. */
export function moisturesOfLot(sqlite: Sqlite, lotId: number): MoistureRow[] {
  return prepared(
    sqlite,
    `SELECT measured_on, method, percent, low_percent, high_percent, observed, note FROM seed_moisture
     WHERE lot_id = ? AND ${notUndone('seed_moisture')} ORDER BY measured_on DESC, id DESC`,
  ).all(lotId) as MoistureRow[]
}

/** The latest moisture measurement of a lot, or null. */
export function moistureOfLot(sqlite: Sqlite, lotId: number): MoistureRow | null {
  return moisturesOfLot(sqlite, lotId)[0] ?? null
}
