import { alias } from 'drizzle-orm/sqlite-core'
import type { AccessionPolicy, BreedingStatus } from '../domain/shared/closed-sets.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { lotForecast } from '../schema/forecast-tables.ts'
import { germinationResult } from '../schema/germination-tables.ts'
import { crop, person, storagePlace } from '../schema/reference-tables.ts'
import { accession, accessionPolicy, lot, seedWeight } from '../schema/stock-tables.ts'
import {
  both,
  columns,
  countOf,
  expression,
  isAny,
  orNull,
  pick,
  type RowOf,
  select,
  selectValue,
} from './columns.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { JOIN_SEED, SEED_NAMES } from './seed-names.ts'

const LIFE = columns({
  lotId: lot.id,
  ...pick(lot, 'accessionId', 'role', 'basis', 'estimated', 'balanceCount', 'quarantineReason', 'generation'),
  cropId: crop.id,
  countedUnit: crop.countedUnit,
  keepsMonths: crop.keepsMonths,
  cropWeightUg: crop.hundredSeedWeightUg,
  ...pick(crop, 'plausibleLowG', 'plausibleHighG', 'federalMinimumPercent', 'stateMinimumPercent'),
  ...pick(crop, 'matingSystem', 'plantsForSeed', 'plantsToMaintain', 'plantsToConserve'),
  /** The years that the crop's seed keeps, the low end of the table's span. */
  storageYears: crop.storageYears,
  weightUg: orNull(seedWeight.hundredSeedWeightUg),
  weightReplicates: orNull(seedWeight.replicates),
  weightSeeds: orNull(seedWeight.seedsCounted),
  weightCv: orNull(seedWeight.coefficientOfVariation),
  /** The doubt of a weight that lots were poured together with; null: by its samples. */
  weightPooledDoubt: orNull(seedWeight.pooledDoubt),
  tested: orNull(germinationResult.tested),
  sprouted: orNull(germinationResult.sprouted),
  testedOn: orNull(germinationResult.testedOn),
  /** What is kept of its forecast; null where there is none, or nothing could be forecast. */
  forecastOn: orNull(lotForecast.computedOn),
  forecastViability: orNull(lotForecast.viability),
  forecastLow: orNull(lotForecast.viabilityLow),
  forecastHigh: orNull(lotForecast.viabilityHigh),
  forecastStart: orNull(lotForecast.viabilityStart),
  forecastAYear: orNull(lotForecast.deviatesAYear),
  ...pick(accession, 'ownGrade', 'ownAssurance', 'varietyId'),
  ownPlants: expression<number | null>('coalesce(accession.own_plants, crop.own_plants)'),
  regrowings: accession.ownRegrowings,
  threshold: expression<number | null>('coalesce(accession.own_threshold, crop.own_threshold)'),
  breeding: expression<BreedingStatus>("coalesce(accession_policy.breeding_status, 'unknown')"),
  policy: expression<AccessionPolicy>("coalesce(accession_policy.policy, 'keep')"),
  decidedOn: orNull(accessionPolicy.onDate),
  decidedWhy: orNull(accessionPolicy.reason),
})

/** A lot with what is needed to say how alive it is and what its accession has to keep. */
export type LifeRow = RowOf<typeof LIFE>

const donor = alias(person, 'donor')

const LOT = both(
  LIFE,
  columns({
    lotNumber: lot.number,
    accessionNumber: accession.number,
    ...pick(lot, 'balanceMassMg', 'harvestFrom', 'harvestTo', 'harvestAbout', 'weightId', 'heldBy'),
    ...SEED_NAMES,
    packetSeeds: crop.packetSeeds,
    place: orNull(storagePlace.path),
    donor: orNull(donor.name),
  }),
)

/** A lot with all that is needed to say what it is, what it holds and how alive it is. */
export type LotRow = RowOf<typeof LOT>

/** Joins an accession with what was last said of how it was bred and whether it is kept. */
export const JOIN_KEEPING = `LEFT JOIN accession_policy ON accession_policy.id = (
    SELECT max(said.id) FROM accession_policy AS said WHERE said.accession_id = accession.id AND ${notUndone('said')})`

const LIFE_JOINS = `
  lot ${JOIN_SEED}
  LEFT JOIN seed_weight ON seed_weight.id = lot.weight_id
  LEFT JOIN germination_result ON germination_result.id = lot.germination_id
  LEFT JOIN lot_forecast ON lot_forecast.lot_id = lot.id
  ${JOIN_KEEPING}`

const LOT_JOINS = `${LIFE_JOINS}
  LEFT JOIN storage_place ON storage_place.id = lot.place_id
  ${joinCanonicalPerson('donor', 'accession.donor_id')}`

/** One lot, or undefined. */
export function lotRow(sqlite: Sqlite, lotId: number): LotRow | undefined {
  return select(sqlite, LOT, (list) => `SELECT ${list} FROM ${LOT_JOINS} WHERE lot.id = ?`).get(lotId)
}

/** Every lot of a crop whose seed was never weighed by the hundred, in order of lot. */
export function unweighedLotsOfCrop(sqlite: Sqlite, cropId: string): LotRow[] {
  return select(
    sqlite,
    LOT,
    (list) => `SELECT ${list} FROM ${LOT_JOINS} WHERE crop.id = ? AND lot.weight_id IS NULL ORDER BY lot.id`,
  ).all(cropId)
}

/** Every lot of some accessions, in order of lot. */
export function lotsOfAccessions(sqlite: Sqlite, accessionIds: readonly number[]): LotRow[] {
  return select(
    sqlite,
    LOT,
    (list) => `SELECT ${list} FROM json_each(?) AS wanted CROSS JOIN ${LOT_JOINS}
     WHERE lot.accession_id = wanted.value ORDER BY lot.accession_id, lot.ordinal`,
  ).all(JSON.stringify(accessionIds))
}

/** Lots with seed in some places, or in all where none is named, by place and number; places by their path. */
export function lotsToCount(sqlite: Sqlite, placeIds: readonly number[]): LotRow[] {
  return select(
    sqlite,
    LOT,
    (list) => `SELECT ${list} FROM ${LOT_JOINS}
     WHERE lot.holds_seed = 1 AND lot.place_id IS NOT NULL
       AND (json_array_length(@places) = 0 OR lot.place_id IN (SELECT value FROM json_each(@places)))
     ORDER BY storage_place.path, lot.number`,
  ).all({ places: JSON.stringify(placeIds) })
}

/** Every lot of some accessions with what says how alive it is, those of one accession together. */
export function livesOfAccessions(sqlite: Sqlite, accessionIds: readonly number[]): LifeRow[] {
  return select(
    sqlite,
    LIFE,
    (list) => `SELECT ${list} FROM json_each(?) AS wanted CROSS JOIN ${LIFE_JOINS}
     WHERE lot.accession_id = wanted.value ORDER BY lot.accession_id, lot.ordinal`,
  ).all(JSON.stringify(accessionIds))
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
  /** Leaves out what is closed. */
  readonly offered?: true
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
  return select(
    sqlite,
    LOT,
    (list) => `SELECT ${list} FROM (
       SELECT lot.id FROM ${narrowJoins(filter, sort)} WHERE ${where} ORDER BY ${order} LIMIT ? OFFSET ?
     ) AS page CROSS JOIN ${LOT_JOINS} WHERE lot.id = page.id ORDER BY ${order}`,
  ).all(...values, page.limit, page.offset)
}

/** How many lots a filter finds. */
export function shelfTotal(sqlite: Sqlite, filter: ShelfFilter): number {
  const { where, values } = conditions(filter)
  return countOf(sqlite, `FROM ${narrowJoins(filter, 'number')} WHERE ${where}`, ...values)
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
  if (filter.offered === true) {
    add(
      `NOT EXISTS (SELECT 1 FROM accession ${JOIN_KEEPING} WHERE accession.id = lot.accession_id AND policy = 'closed')`,
    )
  }
  if (filter.accessionIds !== undefined) {
    add('lot.accession_id IN (SELECT value FROM json_each(?))', JSON.stringify(filter.accessionIds))
  }
  return { where: parts.length === 0 ? 'TRUE' : parts.join(' AND '), values }
}

/** Whether any lot's number begins so. */
export function anyLotBeginsWith(sqlite: Sqlite, barePrefix: string): boolean {
  return isAny(sqlite, 'FROM lot WHERE bare >= ? AND bare < ?', barePrefix, `${barePrefix}~`)
}

/** The lot with this bare number, or undefined. */
export function lotIdByBare(sqlite: Sqlite, bare: string): number | undefined {
  return selectValue(sqlite, lot.id, (id) => `SELECT ${id} FROM lot WHERE bare = ?`).get(bare)
}
