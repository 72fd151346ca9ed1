import type { Sqlite } from '../migrations/connection.ts'
import { seedMoisture } from '../schema/climate-tables.ts'
import { lotForecast } from '../schema/forecast-tables.ts'
import { germinationResult } from '../schema/germination-tables.ts'
import { crop, storagePlace } from '../schema/reference-tables.ts'
import { lot } from '../schema/stock-tables.ts'
import { columns, countOf, expression, pick, type RowOf, select, selectValue } from './columns.ts'
import { notUndone } from './measurements.ts'
import { prepared } from './prepared.ts'
import { JOIN_SEED } from './seed-names.ts'

const CONTAINER_OF_LOT = `FROM lot_container WHERE lot_id = lot.id AND ${notUndone('lot_container')}
  ORDER BY since DESC, id DESC LIMIT 1`

const ofTable = (path: string) => expression<number | null>(`json_extract(crop.reference, '$.${path}')`)

const AGEING = columns({
  lotId: lot.id,
  lotNumber: lot.number,
  cropId: crop.id,
  ...pick(crop, 'countedUnit', 'keepsMonths'),
  oilLow: ofTable('oil_pct[0]'),
  oilHigh: ofTable('oil_pct[1]'),
  yearsLow: ofTable('storage_years[0]'),
  yearsHigh: ofTable('storage_years[1]'),
  ...pick(crop, 'viabilityConstants', 'federalMinimumPercent', 'stateMinimumPercent'),
  /** The day on which the accession came in, or this lot or the one it was split off was brought back. */
  receivedOn: expression<string>(`coalesce(
    (WITH RECURSIVE seed (of_id) AS (
       SELECT lot.id UNION SELECT parent_lot_id FROM seed JOIN lot_parent ON lot_parent.lot_id = of_id
       WHERE relation = 'split')
     SELECT on_date FROM seed JOIN seed_return ON seed_return.lot_id = of_id LIMIT 1),
    accession.received_on)`),
  ...pick(lot, 'harvestFrom', 'harvestTo', 'placeId'),
  /** Of the container it is in, and since when; null: nobody said. */
  airtight: expression<0 | 1 | null>(`(SELECT airtight ${CONTAINER_OF_LOT})`),
  containedSince: expression<string | null>(`(SELECT since ${CONTAINER_OF_LOT})`),
  ownThreshold: expression<number | null>('coalesce(accession.own_threshold, crop.own_threshold)'),
})

/** What of a lot and its crop decides how it ages. */
export type AgeingRow = RowOf<typeof AGEING>

/** The lots with these ids, in order of id. */
export function ageingRows(sqlite: Sqlite, lotIds: readonly number[]): AgeingRow[] {
  return select(
    sqlite,
    AGEING,
    (list) => `SELECT ${list}
     FROM json_each(?) AS wanted CROSS JOIN lot ON lot.id = wanted.value ${JOIN_SEED} ORDER BY lot.id`,
  ).all(JSON.stringify(lotIds))
}

const STAY = columns({
  lotId: expression<number>('lot_id'),
  placeId: expression<number>('place_id'),
  since: expression<string>('since'),
})

/** A lot came to lie in a place. */
export type StayRow = RowOf<typeof STAY>

/** Where lots have lain, each in order of time, with where the seed lay before it was split off another lot. */
export function stayRows(sqlite: Sqlite, lotIds: readonly number[]): StayRow[] {
  return select(
    sqlite,
    STAY,
    (list) => `WITH RECURSIVE seed (lot_id, of_id) AS (
       SELECT value, value FROM json_each(?)
       UNION
       SELECT seed.lot_id, parent_lot_id FROM seed JOIN lot_parent ON lot_parent.lot_id = seed.of_id
       WHERE relation = 'split'),
     stay AS (
       SELECT seed.lot_id, of_id, place_id, since, lot_place.id FROM seed JOIN lot_place ON lot_place.lot_id = seed.of_id
       WHERE ${notUndone('lot_place')})
     SELECT ${list} FROM stay
     WHERE of_id = lot_id OR since < (SELECT coalesce(min(since), '9999') FROM lot_place WHERE lot_place.lot_id = stay.lot_id)
     ORDER BY lot_id, since, id`,
  ).all(JSON.stringify(lotIds))
}

const MOISTURE = columns(pick(seedMoisture, 'lotId', 'measuredOn', 'percent'))

/** The moisture of a lot's seed on a day, percent of fresh weight. */
export type MoistureOnRow = RowOf<typeof MOISTURE>

/** Every standing moisture measurement of some lots, each lot's in order of time. */
export function moistureRows(sqlite: Sqlite, lotIds: readonly number[]): MoistureOnRow[] {
  return select(
    sqlite,
    MOISTURE,
    (list) => `SELECT ${list} FROM json_each(?) AS wanted
       CROSS JOIN seed_moisture ON seed_moisture.lot_id = wanted.value
     WHERE ${notUndone('seed_moisture')} ORDER BY lot_id, measured_on, seed_moisture.id`,
  ).all(JSON.stringify(lotIds))
}

const TEST = columns({
  ...pick(germinationResult, 'lotId', 'testedOn', 'tested', 'sprouted'),
  /** That first noted it; of a result carried over to a part, that of the whole. */
  entryId: expression<number>(
    '(SELECT min(entry_id) FROM germination_result AS first WHERE first.test_id = germination_result.test_id)',
  ),
})

/** A germination test of a lot that stands. */
export type ForecastTestRow = RowOf<typeof TEST>

/** Every standing test of some lots. */
export function forecastTests(sqlite: Sqlite, lotIds: readonly number[]): ForecastTestRow[] {
  return select(
    sqlite,
    TEST,
    (list) => `SELECT ${list} FROM json_each(?) AS wanted
       CROSS JOIN germination_result ON germination_result.lot_id = wanted.value
     WHERE ${notUndone('germination_result')} ORDER BY lot_id, tested_on, germination_result.id`,
  ).all(JSON.stringify(lotIds))
}

const MERGED = columns({
  lotId: expression<number>('lot_id'),
  partId: expression<number>('of_id'),
  joinedOn: expression<string>('joined_on'),
  entryId: expression<number>('entry_id'),
})

/** A lot that was poured into another, on a day and by an entry. */
export type MergedRow = RowOf<typeof MERGED>

/**
 * What was poured into some lots, or into what they were split off before that, however often; taken back is not merged.
 *
 * The index is named, as the planner would else look through every movement of the book.
 */
export function mergedRows(sqlite: Sqlite, lotIds: readonly number[]): MergedRow[] {
  return select(
    sqlite,
    MERGED,
    (list) => `WITH RECURSIVE seed (lot_id, of_id, before_id, joined_on, entry_id) AS (
       SELECT value, value, 9e18, NULL, NULL FROM json_each(?)
       UNION
       SELECT seed.lot_id, parent_lot_id, (SELECT min(entry_id) FROM movement WHERE lot_id = of_id), joined_on, seed.entry_id
       FROM seed JOIN lot_parent ON lot_parent.lot_id = of_id WHERE relation = 'split'
       UNION
       SELECT seed.lot_id, merged.lot_id, merged.entry_id, coalesce(joined_on, merged.on_date),
         coalesce(seed.entry_id, merged.entry_id)
       FROM seed JOIN movement AS filled ON filled.lot_id = of_id AND filled.kind = 'merge' AND filled.entry_id < before_id
         CROSS JOIN movement AS merged INDEXED BY movement_by_entry
           ON merged.entry_id = filled.entry_id AND merged.kind = 'merge'
       WHERE filled.count >= 0 AND filled.mass_mg >= 0 AND (merged.count < 0 OR merged.mass_mg < 0)
         AND ${notUndone('merged')})
     SELECT ${list} FROM seed WHERE joined_on IS NOT NULL AND of_id <> lot_id
     ORDER BY lot_id, of_id`,
  ).all(JSON.stringify(lotIds))
}

const CLIMATE_KIND = columns({
  placeId: expression<number>('place_id'),
  /** How cold it is where nobody measured: its own kind, or that of the nearest around it that is cold. */
  kind: expression<'room' | 'fridge' | 'freezer'>('kind'),
})

/** What every place would be without readings. */
export function climateKinds(sqlite: Sqlite) {
  return select(
    sqlite,
    CLIMATE_KIND,
    (list) => `WITH RECURSIVE inside (place_id, kind) AS (
       SELECT id, iif(kind IN ('fridge', 'freezer'), kind, 'room') FROM storage_place WHERE parent_id IS NULL
       UNION ALL
       SELECT id, iif(storage_place.kind IN ('fridge', 'freezer'), storage_place.kind, inside.kind)
       FROM storage_place JOIN inside ON parent_id = place_id)
     SELECT ${list} FROM inside`,
  ).all()
}

/** A forecast as it is kept. */
export type SavedForecast = Required<Omit<typeof lotForecast.$inferInsert, 'staleSince'>>

/** Keeps a forecast in place of the one before; it holds from now on. */
export function saveForecast(sqlite: Sqlite, kept: SavedForecast): void {
  prepared(
    sqlite,
    `UPDATE lot_forecast SET stale_since = NULL, computed_on = @computedOn, basis = @basis, viability = @viability,
       viability_low = @viabilityLow, viability_high = @viabilityHigh, viability_start = @viabilityStart,
       chance_below = @chanceBelow, deviates_a_year = @deviatesAYear, crosses_early = @crossesEarly,
       crosses_on = @crossesOn, crosses_late = @crossesLate WHERE lot_id = @lotId`,
  ).run(kept)
}

const staleLotIds = (sqlite: Sqlite, found: (lotId: string) => string) =>
  selectValue(sqlite, lotForecast.lotId, found)

/** Lots whose forecast one entry made stale, up to so many. */
export function madeStaleBy(sqlite: Sqlite, entryId: number, limit: number): number[] {
  return staleLotIds(sqlite, (id) => `SELECT ${id} FROM lot_forecast WHERE stale_since = ? LIMIT ?`).all(
    entryId,
    limit,
  )
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
         JOIN movement AS merged ON merged.lot_id = derived.lot_id AND merged.kind = 'merge'
         JOIN movement AS filled ON filled.entry_id = merged.entry_id AND filled.kind = 'merge'
       WHERE merged.count < 0 OR merged.mass_mg < 0)
     UPDATE lot_forecast SET stale_since = @entryId WHERE lot_id IN (SELECT lot_id FROM derived)`,
  ).run({ undoneId, entryId })
}

/** Holds for a forecast that speaks of a day before `@before`, or of pieces that were sound and whose season was over by `@today`. */
const OLD = `stale_since IS NULL AND (computed_on < @before
  OR crosses_on < @today AND basis = 'rule-of-thumb' AND viability = 1 AND deviates_a_year = 0)`

/** Lots whose forecast is stale or old, up to so many. */
export function staleLots(sqlite: Sqlite, old: { before: string; today: string }, limit: number): number[] {
  return staleLotIds(
    sqlite,
    (id) => `SELECT ${id} FROM lot_forecast WHERE stale_since IS NOT NULL
     UNION ALL SELECT ${id} FROM lot_forecast WHERE ${OLD} LIMIT @limit`,
  ).all({ ...old, limit })
}

/** How many forecasts are stale or old, and how many lots there are. */
export function countStale(sqlite: Sqlite, when: { before: string; today: string }) {
  const stale = countOf(sqlite, 'FROM lot_forecast WHERE stale_since IS NOT NULL')
  const old = countOf(sqlite, `FROM lot_forecast WHERE ${OLD}`, when)
  return { left: stale + old, lots: countOf(sqlite, 'FROM lot_forecast') }
}

const CANDIDATE = columns({ placeId: storagePlace.id, ...pick(storagePlace, 'path', 'kind') })

/** A place that a lot might be moved to. */
export type CandidateRow = RowOf<typeof CANDIDATE>

/** Places that differ in climate: those with readings of their own, fridges, freezers and whole rooms; `limit` at most. */
export function candidatePlaces(sqlite: Sqlite, limit: number): CandidateRow[] {
  return select(
    sqlite,
    CANDIDATE,
    (list) => `SELECT ${list} FROM storage_place
     WHERE kind IN ('fridge', 'freezer') OR (kind = 'room' AND parent_id IS NULL)
       OR EXISTS (SELECT 1 FROM climate_batch WHERE place_id = storage_place.id AND ${notUndone('climate_batch')})
     ORDER BY path LIMIT ?`,
  ).all(limit)
}
