import type { Sqlite } from '../migrations/connection.ts'
import { crop } from '../schema/reference-tables.ts'
import { accession } from '../schema/stock-tables.ts'
import { columns, expression, type RowOf, select } from './columns.ts'
import { notUndone } from './measurements.ts'
import { isRecordOf, joinCanonicalPerson } from './person-records.ts'
import { prepared } from './prepared.ts'

const PLAN_CROP = columns({
  accession_id: accession.id,
  species: crop.species,
  crop: crop.commonName,
  life_cycle: crop.lifeCycle,
  home: crop.isolationHomeM,
  strict: crop.isolationStrictM,
  home_source: expression<string | null>("json_extract(crop.reference, '$.sources.isolation_home_m.source')"),
  strict_source: expression<string | null>(
    "json_extract(crop.reference, '$.sources.isolation_strict_m.source')",
  ),
  own: expression<0 | 1>('crop.added_entry_id IS NOT NULL'),
  pollination: crop.pollination,
  bed_area: crop.bedArea,
  days_to_seed: expression<number | null>('coalesce(crop.own_days_to_seed, crop.days_to_seed)'),
  later_sowing_days: crop.laterSowingDays,
})

/** What a plan has to know of an accession's crop. */
export type PlanCropRow = RowOf<typeof PLAN_CROP>

/** The crops of some accessions, as a plan sees them. */
export function planCrops(sqlite: Sqlite, accessionIds: readonly number[]): PlanCropRow[] {
  return select(
    sqlite,
    PLAN_CROP,
    (list) => `SELECT ${list}
     FROM json_each(?) AS wanted CROSS JOIN accession ON accession.id = wanted.value
     JOIN variety ON variety.id = variety_id JOIN crop ON crop.id = crop_id`,
  ).all(JSON.stringify(accessionIds))
}

/** Every crop with its botanical name. */
export function everyCrop(sqlite: Sqlite): { readonly crop: string; readonly species: string }[] {
  return prepared(sqlite, 'SELECT common_name AS crop, species FROM crop').all() as {
    crop: string
    species: string
  }[]
}

/** A garden as it lies in the file, with its grower's name. */
export interface SiteRow {
  readonly id: number
  readonly name: string
  readonly grower_id: number | null
  readonly grower: string | null
  readonly bed_area: number
  readonly most_varieties: number
  readonly season_days: number | null
  readonly takes: string
  readonly latitude: number | null
  readonly longitude: number | null
  readonly east_m: number | null
  readonly north_m: number | null
  readonly note: string
}

/** Every garden, by name. */
export function siteRows(sqlite: Sqlite): SiteRow[] {
  return prepared(
    sqlite,
    `SELECT growing_site.id, growing_site.name, who.id AS grower_id, who.name AS grower, bed_area, most_varieties, season_days,
       takes, latitude, longitude, east_m, north_m, growing_site.note
     FROM growing_site ${joinCanonicalPerson('who', 'growing_site.grower_id')} ORDER BY growing_site.name, growing_site.id`,
  ).all() as SiteRow[]
}

/** What flowers near each garden. */
export function neighbourRows(sqlite: Sqlite) {
  return prepared(
    sqlite,
    `SELECT site_id, crop_id, crop.common_name AS crop, crop.species, metres
     FROM site_neighbour JOIN crop ON crop.id = crop_id ORDER BY site_id, metres, crop_id`,
  ).all() as { site_id: number; crop_id: string; crop: string; species: string; metres: number }[]
}

/** How often a person took seed to bring some back, and how often some came. */
export function growOutsOf(sqlite: Sqlite, personId: number): { took: number; back: number } {
  return prepared(
    sqlite,
    `SELECT count(*) AS took, coalesce(sum(EXISTS (SELECT 1 FROM seed_return
       WHERE seed_return.withdrawal_id = withdrawal.id AND ${notUndone('seed_return')})), 0) AS back
     FROM withdrawal WHERE ${isRecordOf('person_id')} AND purpose IN ('grow-out', 'to-return') AND ${notUndone('withdrawal')}`,
  ).get(personId, personId) as { took: number; back: number }
}
