import type { PopulationGoal } from '../domain/needs/population-goal.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { prepared } from './prepared.ts'

/** A lot with what is needed to say how alive it is and what its accession has to keep. Snake case as in the file. */
export interface LifeRow {
  readonly lot_id: number
  readonly accession_id: number
  readonly role: 'working' | 'reserve' | 'reference' | 'duplicate-elsewhere'
  readonly basis: 'weighed' | 'counted'
  readonly estimated: number
  readonly balance_count: number
  readonly quarantine_reason: string | null
  readonly crop_id: string
  readonly crop_weight_ug: number | null
  readonly plausible_low_g: number | null
  readonly plausible_high_g: number | null
  readonly federal_minimum_percent: number | null
  readonly state_minimum_percent: number | null
  readonly weight_ug: number | null
  readonly weight_replicates: number | null
  readonly weight_seeds: number | null
  readonly weight_cv: number | null
  /** The doubt of a weight that lots were poured together with; null: by its samples. */
  readonly weight_pooled_doubt: number | null
  readonly tested: number | null
  readonly sprouted: number | null
  readonly tested_on: string | null
  /** What is kept of its forecast; null where there is none, or nothing could be forecast. */
  readonly forecast_on: string | null
  readonly forecast_viability: number | null
  readonly forecast_low: number | null
  readonly forecast_high: number | null
  readonly forecast_start: number | null
  readonly forecast_a_year: number | null
  readonly mating_system: string | null
  readonly plants_for_seed: number | null
  readonly plants_to_maintain: number | null
  readonly plants_to_conserve: number | null
  readonly own_grade: PopulationGoal | null
  readonly own_plants: number | null
  readonly regrowings: number | null
  readonly threshold: number | null
  readonly own_assurance: number | null
  readonly variety_id: number
  readonly generation: number
  /** The years that the crop's seed keeps, the low end of the table's span. */
  readonly storage_years: number | null
}

/** A lot with all that is needed to say what it is, what it holds and how alive it is. */
export interface LotRow extends LifeRow {
  readonly lot_number: string
  readonly accession_number: string
  readonly balance_mass_mg: number
  readonly harvest_from: number | null
  readonly harvest_to: number | null
  readonly harvest_about: number
  readonly variety: string
  readonly crop: string
  readonly packet_seeds: number | null
  readonly weight_id: number | null
  readonly place: string | null
  readonly donor: string | null
  readonly held_by: string
}

const LIFE_COLUMNS = `
  lot.id AS lot_id, lot.accession_id, lot.role, lot.basis, lot.estimated, lot.balance_count, lot.quarantine_reason,
  crop.id AS crop_id, crop.hundred_seed_weight_ug AS crop_weight_ug, crop.plausible_low_g, crop.plausible_high_g,
  crop.federal_minimum_percent, crop.state_minimum_percent,
  seed_weight.hundred_seed_weight_ug AS weight_ug, seed_weight.replicates AS weight_replicates,
  seed_weight.seeds_counted AS weight_seeds, seed_weight.coefficient_of_variation AS weight_cv,
  seed_weight.pooled_doubt AS weight_pooled_doubt,
  germination_result.tested, germination_result.sprouted, germination_result.tested_on,
  lot_forecast.computed_on AS forecast_on, lot_forecast.viability AS forecast_viability,
  lot_forecast.viability_low AS forecast_low, lot_forecast.viability_high AS forecast_high,
  lot_forecast.viability_start AS forecast_start,
  lot_forecast.deviates_a_year AS forecast_a_year,
  crop.mating_system, crop.plants_for_seed, crop.plants_to_maintain, crop.plants_to_conserve, accession.own_grade,
  coalesce(accession.own_plants, crop.own_plants) AS own_plants,
  accession.own_regrowings AS regrowings, coalesce(accession.own_threshold, crop.own_threshold) AS threshold,
  accession.own_assurance, accession.variety_id, lot.generation, crop.storage_years`

const LOT_COLUMNS = `${LIFE_COLUMNS},
  lot.number AS lot_number, accession.number AS accession_number, lot.balance_mass_mg,
  lot.harvest_from, lot.harvest_to, lot.harvest_about, variety.name AS variety, crop.common_name AS crop, crop.packet_seeds,
  lot.weight_id, storage_place.path AS place, donor.name AS donor, lot.held_by`

const LIFE_JOINS = `
  lot
  JOIN accession ON accession.id = lot.accession_id
  JOIN variety ON variety.id = accession.variety_id
  JOIN crop ON crop.id = variety.crop_id
  LEFT JOIN seed_weight ON seed_weight.id = lot.weight_id
  LEFT JOIN germination_result ON germination_result.id = lot.germination_id
  LEFT JOIN lot_forecast ON lot_forecast.lot_id = lot.id`

const LOT_JOINS = `${LIFE_JOINS}
  LEFT JOIN storage_place ON storage_place.id = lot.place_id
  ${joinCanonicalPerson('donor', 'accession.donor_id')}`

/** One lot, or undefined. */
export function lotRow(sqlite: Sqlite, lotId: number): LotRow | undefined {
  return prepared(sqlite, `SELECT ${LOT_COLUMNS} FROM ${LOT_JOINS} WHERE lot.id = ?`).get(lotId) as
    | LotRow
    | undefined
}

/** Every lot of a crop whose seed was never weighed by the hundred, in order of lot. */
export function unweighedLotsOfCrop(sqlite: Sqlite, cropId: string): LotRow[] {
  return prepared(
    sqlite,
    `SELECT ${LOT_COLUMNS} FROM ${LOT_JOINS} WHERE crop.id = ? AND lot.weight_id IS NULL ORDER BY lot.id`,
  ).all(cropId) as LotRow[]
}

/** Every lot of some accessions, in order of lot. */
export function lotsOfAccessions(sqlite: Sqlite, accessionIds: readonly number[]): LotRow[] {
  return prepared(
    sqlite,
    `SELECT ${LOT_COLUMNS} FROM json_each(?) AS wanted CROSS JOIN ${LOT_JOINS}
     WHERE lot.accession_id = wanted.value ORDER BY lot.accession_id, lot.ordinal`,
  ).all(JSON.stringify(accessionIds)) as LotRow[]
}

/** Lots with seed in some places, or in all where none is named, by place and number; places by their path. */
export function lotsToCount(sqlite: Sqlite, placeIds: readonly number[]): LotRow[] {
  return prepared(
    sqlite,
    `SELECT ${LOT_COLUMNS} FROM ${LOT_JOINS}
     WHERE lot.holds_seed = 1 AND lot.place_id IS NOT NULL
       AND (json_array_length(@places) = 0 OR lot.place_id IN (SELECT value FROM json_each(@places)))
     ORDER BY storage_place.path, lot.number`,
  ).all({ places: JSON.stringify(placeIds) }) as LotRow[]
}

/** Every lot of some accessions with what says how alive it is, those of one accession together. */
export function livesOfAccessions(sqlite: Sqlite, accessionIds: readonly number[]): LifeRow[] {
  return prepared(
    sqlite,
    `SELECT ${LIFE_COLUMNS} FROM json_each(?) AS wanted CROSS JOIN ${LIFE_JOINS}
     WHERE lot.accession_id = wanted.value ORDER BY lot.accession_id, lot.ordinal`,
  ).all(JSON.stringify(accessionIds)) as LifeRow[]
}

/** What a shelf search asks for; undefined members do not narrow it. */
export interface ShelfFilter {
  readonly barePrefix?: string
  readonly match?: string
  readonly cropId?: string | undefined
  readonly role?: string | undefined
  readonly placeId?: number | undefined
  readonly lotIds?: readonly number[] | undefined
  readonly quarantined?: boolean | undefined
  readonly emptyToo: boolean
  readonly accessionIds?: readonly number[]
}

const SORTS = {
  number: 'lot.number %',
  variety: 'variety.name_folded %, lot.number',
  crop: 'crop.common_name %, variety.name_folded, lot.number',
  harvest: 'lot.harvest_to %, lot.number',
  count: 'lot.balance_count %, lot.number',
  place: 'storage_place.path %, lot.number',
} as const

export type ShelfSort = keyof typeof SORTS

/**
 * A page of the shelf, filtered and sorted.
 *
 * The page is found on lots alone, as far as can be from an index, and only its rows are then filled in.
 */
export function shelfPage(
  sqlite: Sqlite,
  filter: ShelfFilter,
  sort: ShelfSort,
  descending: boolean,
  page: { readonly offset: number; readonly limit: number },
): LotRow[] {
  const { where, values } = conditions(filter)
  const order = SORTS[sort].replaceAll('%', descending ? 'DESC' : 'ASC')
  return prepared(
    sqlite,
    `SELECT ${LOT_COLUMNS} FROM (
       SELECT lot.id FROM ${narrowJoins(filter, sort)} WHERE ${where} ORDER BY ${order} LIMIT ? OFFSET ?
     ) AS page CROSS JOIN ${LOT_JOINS} WHERE lot.id = page.id ORDER BY ${order}`,
  ).all(...values, page.limit, page.offset) as LotRow[]
}

/** How many lots a filter finds. */
export function shelfTotal(sqlite: Sqlite, filter: ShelfFilter): number {
  const { where, values } = conditions(filter)
  const found = prepared(sqlite, `SELECT count(*) FROM ${narrowJoins(filter, 'number')} WHERE ${where}`)
  return Number(found.pluck().get(...values))
}

/** Only the tables that a filter and a sort look at. */
function narrowJoins(filter: ShelfFilter, sort: ShelfSort): string {
  const byName = filter.cropId !== undefined || sort === 'variety' || sort === 'crop'
  return [
    'lot',
    byName
      ? 'JOIN accession ON accession.id = lot.accession_id JOIN variety ON variety.id = accession.variety_id'
      : '',
    sort === 'crop' ? 'JOIN crop ON crop.id = variety.crop_id' : '',
    sort === 'place' ? 'LEFT JOIN storage_place ON storage_place.id = lot.place_id' : '',
  ].join(' ')
}

function conditions(filter: ShelfFilter): { where: string; values: unknown[] } {
  const parts: string[] = []
  const values: unknown[] = []
  const add = (sql: string, ...more: unknown[]) => {
    parts.push(sql)
    values.push(...more)
  }
  if (!filter.emptyToo) add('lot.holds_seed = 1')
  if (filter.barePrefix !== undefined)
    add('lot.bare >= ? AND lot.bare < ?', filter.barePrefix, `${filter.barePrefix}~`)
  if (filter.match !== undefined) {
    add(
      'lot.accession_id IN (SELECT rowid FROM accession_search WHERE accession_search MATCH ?)',
      filter.match,
    )
  }
  if (filter.cropId !== undefined) add('variety.crop_id = ?', filter.cropId)
  if (filter.role !== undefined) add('lot.role = ?', filter.role)
  if (filter.placeId !== undefined) add('lot.place_id = ?', filter.placeId)
  if (filter.lotIds !== undefined) {
    add('lot.id IN (SELECT value FROM json_each(?))', JSON.stringify(filter.lotIds))
  }
  if (filter.quarantined !== undefined) {
    add(`lot.quarantine_reason IS ${filter.quarantined ? 'NOT ' : ''}NULL`)
  }
  if (filter.accessionIds !== undefined) {
    add('lot.accession_id IN (SELECT value FROM json_each(?))', JSON.stringify(filter.accessionIds))
  }
  return { where: parts.length === 0 ? 'TRUE' : parts.join(' AND '), values }
}

/** Whether any lot's number begins so. */
export function anyLotBeginsWith(sqlite: Sqlite, barePrefix: string): boolean {
  return (
    prepared(sqlite, 'SELECT 1 FROM lot WHERE bare >= ? AND bare < ? LIMIT 1').get(
      barePrefix,
      `${barePrefix}~`,
    ) !== undefined
  )
}

/** The lot with this bare number, or undefined. */
export function lotIdByBare(sqlite: Sqlite, bare: string): number | undefined {
  return prepared(sqlite, 'SELECT id FROM lot WHERE bare = ?').pluck().get(bare) as number | undefined
}
