import type { Sqlite } from '../migrations/connection.ts'
import { crop } from '../schema/reference-tables.ts'
import { lot } from '../schema/stock-tables.ts'
import { columns, expression, type RowOf, select } from './columns.ts'
import { notUndone } from './measurements.ts'
import { prepared } from './prepared.ts'

const CONTAINER_OF_LOT = `FROM lot_container WHERE lot_id = lot.id AND ${notUndone('lot_container')}
  ORDER BY since DESC, id DESC LIMIT 1`

const AGEING = columns({
  lot_id: lot.id,
  lot_number: lot.number,
  crop_id: crop.id,
  oil_low: expression<number | null>("json_extract(crop.reference, '$.oil_pct[0]')"),
  oil_high: expression<number | null>("json_extract(crop.reference, '$.oil_pct[1]')"),
  years_low: expression<number | null>("json_extract(crop.reference, '$.storage_years[0]')"),
  years_high: expression<number | null>("json_extract(crop.reference, '$.storage_years[1]')"),
  viability_constants: crop.viabilityConstants,
  federal_minimum_percent: crop.federalMinimumPercent,
  state_minimum_percent: crop.stateMinimumPercent,
  /** The day on which the accession came in, or this lot or the one it was split off was brought back. */
  received_on: expression<string>(`coalesce(
    (WITH RECURSIVE seed (of_id) AS (
       SELECT lot.id UNION SELECT parent_lot_id FROM seed JOIN lot_parent ON lot_parent.lot_id = of_id
       WHERE relation = 'split')
     SELECT on_date FROM seed JOIN seed_return ON seed_return.lot_id = of_id LIMIT 1),
    accession.received_on)`),
  harvest_from: lot.harvestFrom,
  harvest_to: lot.harvestTo,
  place_id: lot.placeId,
  /** Of the container it is in, and since when; null: nobody said. */
  airtight: expression<0 | 1 | null>(`(SELECT airtight ${CONTAINER_OF_LOT})`),
  contained_since: expression<string | null>(`(SELECT since ${CONTAINER_OF_LOT})`),
  own_threshold: expression<number | null>('coalesce(accession.own_threshold, crop.own_threshold)'),
})

/** What of a lot and its crop decides how it ages. */
export type AgeingRow = RowOf<typeof AGEING>

/** The lots with these ids, in order of id. */
export function ageingRows(sqlite: Sqlite, lotIds: readonly number[]): AgeingRow[] {
  return select(
    sqlite,
    AGEING,
    (list) => `SELECT ${list}
     FROM json_each(?) AS wanted CROSS JOIN lot ON lot.id = wanted.value
       JOIN accession ON accession.id = lot.accession_id JOIN variety ON variety.id = accession.variety_id
       JOIN crop ON crop.id = variety.crop_id ORDER BY lot.id`,
  ).all(JSON.stringify(lotIds))
}

/** A lot came to lie in a place. */
export interface StayRow {
  readonly lot_id: number
  readonly place_id: number
  readonly since: string
}

/** Where lots have lain, each in order of time, with where the seed lay before it was split off another lot. */
export function stayRows(sqlite: Sqlite, lotIds: readonly number[]): StayRow[] {
  return prepared(
    sqlite,
    `WITH RECURSIVE seed (lot_id, of_id) AS (
       SELECT value, value FROM json_each(?)
       UNION
       SELECT seed.lot_id, parent_lot_id FROM seed JOIN lot_parent ON lot_parent.lot_id = seed.of_id
       WHERE relation = 'split'),
     stay AS (
       SELECT seed.lot_id, of_id, place_id, since, lot_place.id FROM seed JOIN lot_place ON lot_place.lot_id = seed.of_id
       WHERE ${notUndone('lot_place')})
     SELECT lot_id, place_id, since FROM stay
     WHERE of_id = lot_id OR since < (SELECT coalesce(min(since), '9999') FROM lot_place WHERE lot_place.lot_id = stay.lot_id)
     ORDER BY lot_id, since, id`,
  ).all(JSON.stringify(lotIds)) as StayRow[]
}

/** The moisture of a lot's seed on a day, percent of fresh weight. */
export interface MoistureOnRow {
  readonly lot_id: number
  readonly measured_on: string
  readonly percent: number
}

/** Every standing moisture measurement of some lots, each lot's in order of time. */
export function moistureRows(sqlite: Sqlite, lotIds: readonly number[]): MoistureOnRow[] {
  return prepared(
    sqlite,
    `SELECT lot_id, measured_on, percent FROM json_each(?) AS wanted
       CROSS JOIN seed_moisture ON seed_moisture.lot_id = wanted.value
     WHERE ${notUndone('seed_moisture')} ORDER BY lot_id, measured_on, seed_moisture.id`,
  ).all(JSON.stringify(lotIds)) as MoistureOnRow[]
}

/** A germination test of a lot that stands. */
export interface ForecastTestRow {
  readonly lot_id: number
  /** That first noted it; of a result carried over to a part, that of the whole. */
  readonly entry_id: number
  readonly tested_on: string
  readonly tested: number
  readonly sprouted: number
}

/** Every standing test of some lots. */
export function forecastTests(sqlite: Sqlite, lotIds: readonly number[]): ForecastTestRow[] {
  return prepared(
    sqlite,
    `SELECT lot_id, tested_on, tested, sprouted,
       (SELECT min(entry_id) FROM germination_result AS first WHERE first.test_id = germination_result.test_id) AS entry_id
     FROM json_each(?) AS wanted
       CROSS JOIN germination_result ON germination_result.lot_id = wanted.value
     WHERE ${notUndone('germination_result')} ORDER BY lot_id, tested_on, germination_result.id`,
  ).all(JSON.stringify(lotIds)) as ForecastTestRow[]
}

/** A lot that was poured into another, on a day and by an entry. */
export interface MergedRow {
  readonly lot_id: number
  readonly part_id: number
  readonly joined_on: string
  readonly entry_id: number
}

/**
 * What was poured into some lots, or into what they were split off before that, however often; taken back is not merged.
 *
 * The index is named, as the planner would else look through every movement of the book.
 */
export function mergedRows(sqlite: Sqlite, lotIds: readonly number[]): MergedRow[] {
  return prepared(
    sqlite,
    `WITH RECURSIVE seed (lot_id, of_id, before_id, joined_on, entry_id) AS (
       SELECT value, value, 9e18, NULL, NULL FROM json_each(?)
       UNION
       SELECT seed.lot_id, parent_lot_id, (SELECT min(entry_id) FROM movement WHERE lot_id = of_id), joined_on, seed.entry_id
       FROM seed JOIN lot_parent ON lot_parent.lot_id = of_id WHERE relation = 'split'
       UNION
       SELECT seed.lot_id, merged.lot_id, merged.entry_id, coalesce(joined_on, merged.on_date),
         coalesce(seed.entry_id, merged.entry_id)
       FROM seed JOIN movement AS filled ON filled.lot_id = of_id AND filled.kind = 'join' AND filled.entry_id < before_id
         CROSS JOIN movement AS merged INDEXED BY movement_by_entry
           ON merged.entry_id = filled.entry_id AND merged.kind = 'join'
       WHERE filled.count >= 0 AND filled.mass_mg >= 0 AND (merged.count < 0 OR merged.mass_mg < 0)
         AND ${notUndone('merged')})
     SELECT lot_id, of_id AS part_id, joined_on, entry_id FROM seed WHERE joined_on IS NOT NULL AND of_id <> lot_id
     ORDER BY lot_id, part_id`,
  ).all(JSON.stringify(lotIds)) as MergedRow[]
}

/** A place with the kind that says how cold it is where nobody measured: its own, or of the nearest around it that is cold. */
export interface ClimateKindRow {
  readonly place_id: number
  readonly kind: 'room' | 'fridge' | 'freezer'
}

/** What every place would be without readings. */
export function climateKinds(sqlite: Sqlite): ClimateKindRow[] {
  return prepared(
    sqlite,
    `WITH RECURSIVE inside (place_id, kind) AS (
       SELECT id, iif(kind IN ('fridge', 'freezer'), kind, 'room') FROM storage_place WHERE parent_id IS NULL
       UNION ALL
       SELECT id, iif(storage_place.kind IN ('fridge', 'freezer'), storage_place.kind, inside.kind)
       FROM storage_place JOIN inside ON parent_id = place_id)
     SELECT place_id, kind FROM inside`,
  ).all() as ClimateKindRow[]
}

/** A forecast as it is kept. */
export interface SavedForecast {
  readonly lotId: number
  readonly computedOn: string
  readonly basis: 'constants-seen' | 'constants-from-memory' | 'rule-of-thumb' | 'refused'
  readonly viability: number | null
  readonly low: number | null
  readonly high: number | null
  readonly start: number | null
  readonly chanceBelow: number | null
  readonly deviatesAYear: number | null
  readonly early: string | null
  readonly crosses: string | null
  readonly late: string | null
}

/** Keeps a forecast in place of the one before; it holds from now on. */
export function saveForecast(sqlite: Sqlite, kept: SavedForecast): void {
  prepared(
    sqlite,
    `UPDATE lot_forecast SET stale_since = NULL, computed_on = ?, basis = ?, viability = ?, viability_low = ?,
       viability_high = ?, viability_start = ?, chance_below = ?, deviates_a_year = ?, crosses_early = ?, crosses_on = ?, crosses_late = ? WHERE lot_id = ?`,
  ).run(
    kept.computedOn,
    kept.basis,
    kept.viability,
    kept.low,
    kept.high,
    kept.start,
    kept.chanceBelow,
    kept.deviatesAYear,
    kept.early,
    kept.crosses,
    kept.late,
    kept.lotId,
  )
}

/** Lots whose forecast one entry made stale, up to so many. */
export function madeStaleBy(sqlite: Sqlite, entryId: number, limit: number): number[] {
  return prepared(sqlite, 'SELECT lot_id FROM lot_forecast WHERE stale_since = ? LIMIT ?')
    .pluck()
    .all(entryId, limit) as number[]
}

/** Makes stale what was split off from a lot whose test was taken back, and what it was poured into: its tests are theirs too. */
export function makeDerivedLotsStale(sqlite: Sqlite, undoneId: number, entryId: number): void {
  prepared(
    sqlite,
    `WITH RECURSIVE derived (lot_id) AS (
       SELECT lot_id FROM germination_result WHERE entry_id = @undoneId
       UNION
       SELECT lot_parent.lot_id FROM derived JOIN lot_parent ON parent_lot_id = derived.lot_id WHERE relation = 'split'
       UNION
       SELECT filled.lot_id FROM derived
         JOIN movement AS merged ON merged.lot_id = derived.lot_id AND merged.kind = 'join'
         JOIN movement AS filled ON filled.entry_id = merged.entry_id AND filled.kind = 'join'
       WHERE merged.count < 0 OR merged.mass_mg < 0)
     UPDATE lot_forecast SET stale_since = @entryId WHERE lot_id IN (SELECT lot_id FROM derived)`,
  ).run({ undoneId, entryId })
}

/** Lots whose forecast is stale or speaks of a day before `before`, up to so many. */
export function staleLots(sqlite: Sqlite, before: string, limit: number): number[] {
  return prepared(
    sqlite,
    `SELECT lot_id FROM lot_forecast WHERE stale_since IS NOT NULL
     UNION ALL SELECT lot_id FROM lot_forecast WHERE stale_since IS NULL AND computed_on < ? LIMIT ?`,
  )
    .pluck()
    .all(before, limit) as number[]
}

/** How many forecasts are stale or older than `before`, and how many lots there are. */
export function countStale(sqlite: Sqlite, before: string): { readonly left: number; readonly lots: number } {
  return prepared(
    sqlite,
    `SELECT (SELECT count(*) FROM lot_forecast WHERE stale_since IS NOT NULL)
       + (SELECT count(*) FROM lot_forecast WHERE stale_since IS NULL AND computed_on < ?) AS left,
       (SELECT count(*) FROM lot_forecast) AS lots`,
  ).get(before) as { left: number; lots: number }
}

/** A place that a lot might be moved to. */
export interface CandidateRow {
  readonly place_id: number
  readonly path: string
  readonly kind: 'room' | 'cupboard' | 'fridge' | 'freezer' | 'shelf' | 'box' | 'jar'
}

/** Places that differ in climate: those with readings of their own, fridges, freezers and whole rooms; `limit` at most. */
export function candidatePlaces(sqlite: Sqlite, limit: number): CandidateRow[] {
  return prepared(
    sqlite,
    `SELECT id AS place_id, path, kind FROM storage_place
     WHERE kind IN ('fridge', 'freezer') OR (kind = 'room' AND parent_id IS NULL)
       OR EXISTS (SELECT 1 FROM climate_batch WHERE place_id = storage_place.id AND ${notUndone('climate_batch')})
     ORDER BY path LIMIT ?`,
  ).all(limit) as CandidateRow[]
}
