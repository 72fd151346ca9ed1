import type { Sqlite } from '../migrations/connection.ts'
import { lotContainer, seedMoisture } from '../schema/climate-tables.ts'
import { storagePlace } from '../schema/reference-tables.ts'
import { columns, expression, pick, type RowOf, select, selectValue } from './columns.ts'
import { notUndone } from './measurements.ts'

const STAY = columns({
  placeId: storagePlace.id,
  place: storagePlace.path,
  from: expression<string>('since'),
  until: expression<string | null>('lead(since) OVER (ORDER BY since)'),
})

/** Where a lot lay: from a day on, up to but not including `until`, or until now where that is null. */
export type Stay = RowOf<typeof STAY>

/** Where a lot has been since it is in the book, in order of time. Two moves on one day leave the later. */
export function staysOfLot(sqlite: Sqlite, lotId: number): Stay[] {
  return select(
    sqlite,
    STAY,
    (list) => `WITH stay AS (
       SELECT place_id, since, max(id) FROM lot_place
       WHERE lot_id = ? AND ${notUndone('lot_place')} GROUP BY since)
     SELECT ${list} FROM stay JOIN storage_place ON storage_place.id = place_id ORDER BY since`,
  ).all(lotId)
}

/** SQL for the batches of a place, bound once, whose readings count. */
const STANDING_BATCHES = `SELECT id FROM climate_batch WHERE climate_batch.place_id = ? AND ${notUndone('climate_batch')}`

/**
 * The place whose readings hold for a place: itself, or the nearest around it that has any, but nothing outside the
 * nearest fridge or freezer, which has a climate of its own; null where none has. `kind`: as if the place were of that kind.
 */
export function placeWithReadings(sqlite: Sqlite, placeId: number, kind?: string): number | null {
  const found = selectValue(
    sqlite,
    expression<number>('around.id'),
    (id) => `WITH RECURSIVE around (id, parent_id, kind, steps) AS (
       SELECT id, parent_id, coalesce(?, kind), 0 FROM storage_place WHERE id = ?
       UNION ALL
       SELECT storage_place.id, storage_place.parent_id, storage_place.kind, steps + 1
       FROM storage_place JOIN around ON storage_place.id = around.parent_id
       WHERE around.kind NOT IN ('fridge', 'freezer'))
     SELECT ${id} FROM around WHERE EXISTS (
       SELECT 1 FROM climate_batch WHERE place_id = around.id AND ${notUndone('climate_batch')})
     ORDER BY steps LIMIT 1`,
  ).get(kind ?? null, placeId)
  return found ?? null
}

const LETTERS_OF = { day: 10, month: 7 } as const

const summary = (by: keyof typeof LETTERS_OF) =>
  columns({
    /** 'YYYY-MM-DD' or 'YYYY-MM'. */
    on: expression<string>(`substr(at, 1, ${LETTERS_OF[by]})`),
    readings: expression<number>('count(*)'),
    meanCc: expression<number>('avg(temperature_cc)'),
    lowCc: expression<number>('min(temperature_cc)'),
    highCc: expression<number>('max(temperature_cc)'),
    meanPm: expression<number | null>('avg(humidity_pm)'),
    lowPm: expression<number | null>('min(humidity_pm)'),
    highPm: expression<number | null>('max(humidity_pm)'),
  })
const SUMMARY = { day: summary('day'), month: summary('month') }

/**
 * The readings of a day or a month in one line: hundredths of a degree C, per mille of relative humidity.
 *
 * Humidity is null where no reading of that time had any.
 */
export type ClimateSummary = RowOf<typeof SUMMARY.day>

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
  return select(
    sqlite,
    SUMMARY[by],
    (list) => `SELECT ${list}
     FROM climate_reading WHERE place_id = ? AND at >= ? AND at < ? AND batch_id IN (${STANDING_BATCHES})
     GROUP BY 1 ORDER BY 1`,
  ).all(placeId, from, until ?? '9999-12-31T24:00', placeId)
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

const CONTAINER = columns(pick(lotContainer, 'kind', 'airtight', 'pestProof', 'since', 'note'))

/** What a lot is kept in. */
export type ContainerRow = RowOf<typeof CONTAINER>

/** The container a lot is in now, or null where nobody has said. */
export function containerOfLot(sqlite: Sqlite, lotId: number): ContainerRow | null {
  const row = select(
    sqlite,
    CONTAINER,
    (list) => `SELECT ${list} FROM lot_container
     WHERE lot_id = ? AND ${notUndone('lot_container')} ORDER BY since DESC, id DESC LIMIT 1`,
  ).get(lotId)
  return row ?? null
}

const MOISTURE = columns(
  pick(seedMoisture, 'measuredOn', 'method', 'percent', 'lowPercent', 'highPercent', 'observed', 'note'),
)

/** A measurement of a lot's moisture, percent of fresh weight. */
export type MoistureRow = RowOf<typeof MOISTURE>

/** Every standing moisture measurement of a lot, latest first. */
export function moisturesOfLot(sqlite: Sqlite, lotId: number): MoistureRow[] {
  return select(
    sqlite,
    MOISTURE,
    (list) => `SELECT ${list} FROM seed_moisture
     WHERE lot_id = ? AND ${notUndone('seed_moisture')} ORDER BY measured_on DESC, id DESC`,
  ).all(lotId)
}

/** The latest moisture measurement of a lot, or null. */
export function moistureOfLot(sqlite: Sqlite, lotId: number): MoistureRow | null {
  return moisturesOfLot(sqlite, lotId)[0] ?? null
}
