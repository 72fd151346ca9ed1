import type { Sqlite } from '../migrations/connection.ts'
import { prepared } from './prepared.ts'

/** A lot with all that is needed to say what it holds and how alive it is. Snake case as in the file. */
export interface LotRow {
  readonly lot_id: number
  readonly lot_number: string
  readonly accession_id: number
  readonly accession_number: string
  readonly role: 'working' | 'reserve' | 'reference' | 'duplicate-elsewhere'
  readonly basis: 'weighed' | 'counted'
  readonly estimated: number
  readonly balance_count: number
  readonly balance_mass_mg: number
  readonly harvest_from: number | null
  readonly harvest_to: number | null
  readonly harvest_about: number
  readonly generation: number
  readonly quarantine_reason: string | null
  readonly variety_id: number
  readonly variety: string
  readonly crop_id: string
  readonly crop: string
  readonly crop_weight_ug: number | null
  readonly plausible_low_g: number | null
  readonly plausible_high_g: number | null
  readonly packet_seeds: number | null
  readonly federal_minimum_percent: number | null
  readonly state_minimum_percent: number | null
  readonly weight_id: number | null
  readonly weight_ug: number | null
  readonly weight_replicates: number | null
  readonly weight_seeds: number | null
  readonly weight_cv: number | null
  readonly tested: number | null
  readonly sprouted: number | null
  readonly tested_on: string | null
  readonly plants: number | null
  readonly regrowings: number | null
  readonly threshold: number | null
  readonly place: string | null
  readonly donor: string | null
}

const LOT_COLUMNS = `
  lot.id AS lot_id, lot.number AS lot_number, lot.accession_id, accession.number AS accession_number,
  lot.role, lot.basis, lot.estimated, lot.balance_count, lot.balance_mass_mg,
  lot.harvest_from, lot.harvest_to, lot.harvest_about, lot.generation, lot.quarantine_reason,
  variety.id AS variety_id, variety.name AS variety, crop.id AS crop_id, crop.common_name AS crop,
  crop.hundred_seed_weight_ug AS crop_weight_ug, crop.plausible_low_g, crop.plausible_high_g, crop.packet_seeds,
  crop.federal_minimum_percent, crop.state_minimum_percent,
  seed_weight.id AS weight_id, seed_weight.hundred_seed_weight_ug AS weight_ug,
  seed_weight.replicates AS weight_replicates, seed_weight.seeds_counted AS weight_seeds,
  seed_weight.coefficient_of_variation AS weight_cv,
  germination_result.tested, germination_result.sprouted, germination_result.tested_on,
  coalesce(accession.own_plants, crop.own_plants, crop.plants_to_maintain) AS plants,
  accession.own_regrowings AS regrowings,
  coalesce(accession.own_threshold, crop.own_threshold) AS threshold,
  storage_place.path AS place, person.name AS donor`

const LOT_JOINS = `
  lot
  JOIN accession ON accession.id = lot.accession_id
  JOIN variety ON variety.id = accession.variety_id
  JOIN crop ON crop.id = variety.crop_id
  LEFT JOIN seed_weight ON seed_weight.id = lot.weight_id
  LEFT JOIN germination_result ON germination_result.id = lot.germination_id
  LEFT JOIN storage_place ON storage_place.id = lot.place_id
  LEFT JOIN person ON person.id = accession.donor_id`

/** One lot, or undefined. */
export function lotRow(sqlite: Sqlite, lotId: number): LotRow | undefined {
  return prepared(sqlite, `SELECT ${LOT_COLUMNS} FROM ${LOT_JOINS} WHERE lot.id = ?`).get(lotId) as
    | LotRow
    | undefined
}

/** Every lot of some accessions, in order of lot. */
export function lotsOfAccessions(sqlite: Sqlite, accessionIds: readonly number[]): LotRow[] {
  return prepared(
    sqlite,
    `SELECT ${LOT_COLUMNS} FROM json_each(?) AS wanted CROSS JOIN ${LOT_JOINS}
     WHERE lot.accession_id = wanted.value ORDER BY lot.accession_id, lot.ordinal`,
  ).all(JSON.stringify(accessionIds)) as LotRow[]
}

/** Every lot of the collection, those of one accession together, one at a time. */
export function everyLotForNeeds(sqlite: Sqlite): IterableIterator<LotRow> {
  return prepared(
    sqlite,
    `SELECT ${LOT_COLUMNS} FROM ${LOT_JOINS} ORDER BY lot.accession_id, lot.ordinal`,
  ).iterate() as IterableIterator<LotRow>
}

/** What a shelf search asks for; undefined members do not narrow it. */
export interface ShelfFilter {
  readonly barePrefix?: string
  readonly match?: string
  readonly cropId?: string | undefined
  readonly role?: string | undefined
  readonly placeId?: number | undefined
  readonly quarantined?: boolean | undefined
  readonly emptyToo: boolean
  readonly accessionIds?: readonly number[]
}

const SORTS = {
  number: 'lot.number',
  variety: 'variety.name_folded %, lot.number',
  crop: 'crop.common_name %, variety.name_folded, lot.number',
  harvest: 'lot.harvest_to %, lot.number',
  count: 'lot.balance_count %, lot.number',
  place: 'storage_place.path %, lot.number',
} as const

export type ShelfSort = keyof typeof SORTS

/** A page of the shelf, filtered and sorted. */
export function shelfPage(
  sqlite: Sqlite,
  filter: ShelfFilter,
  sort: ShelfSort,
  descending: boolean,
  page: { readonly offset: number; readonly limit: number },
): LotRow[] {
  const { where, values } = conditions(filter)
  const direction = descending ? 'DESC' : 'ASC'
  const order = SORTS[sort].includes('%')
    ? SORTS[sort].replaceAll('%', direction)
    : `${SORTS[sort]} ${direction}`
  return prepared(
    sqlite,
    `SELECT ${LOT_COLUMNS} FROM ${LOT_JOINS} WHERE ${where} ORDER BY ${order} LIMIT ? OFFSET ?`,
  ).all(...values, page.limit, page.offset) as LotRow[]
}

/** How many lots a filter finds. */
export function shelfTotal(sqlite: Sqlite, filter: ShelfFilter): number {
  const { where, values } = conditions(filter)
  const joins =
    filter.cropId === undefined
      ? 'lot'
      : 'lot JOIN accession ON accession.id = lot.accession_id JOIN variety ON variety.id = accession.variety_id'
  return Number(
    prepared(sqlite, `SELECT count(*) FROM ${joins} WHERE ${where}`)
      .pluck()
      .get(...values),
  )
}

function conditions(filter: ShelfFilter): { where: string; values: unknown[] } {
  const parts: string[] = []
  const values: unknown[] = []
  const add = (sql: string, ...more: unknown[]) => {
    parts.push(sql)
    values.push(...more)
  }
  if (!filter.emptyToo) add('(lot.balance_count > 0 OR lot.balance_mass_mg > 0)')
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
