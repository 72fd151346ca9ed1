import type { Sqlite } from '../migrations/connection.ts'
import { notUndone } from './measurements.ts'
import { isRecordOf, joinCanonicalPerson } from './person-records.ts'
import { prepared } from './prepared.ts'

/** What a plan has to know of an accession's crop. */
export interface PlanCropRow {
  readonly accession_id: number
  readonly species: string
  readonly crop: string
  readonly biennial: number
  readonly home: number | null
  readonly strict: number | null
  readonly home_source: string | null
  readonly strict_source: string | null
  readonly pollination: string | null
  readonly own_days_to_seed: number | null
}

/** The crops of some accessions, as a plan sees them. */
export function planCrops(sqlite: Sqlite, accessionIds: readonly number[]): PlanCropRow[] {
  return prepared(
    sqlite,
    `SELECT accession.id AS accession_id, crop.species, crop.common_name AS crop,
       coalesce(json_extract(crop.reference, '$.life_cycle'), '') = 'biennial' AS biennial,
       json_extract(crop.reference, '$.isolation_home_m') AS home,
       json_extract(crop.reference, '$.isolation_strict_m') AS strict,
       json_extract(crop.reference, '$.sources.isolation_home_m.source') AS home_source,
       json_extract(crop.reference, '$.sources.isolation_strict_m.source') AS strict_source,
       json_extract(crop.reference, '$.pollination') AS pollination, crop.own_days_to_seed
     FROM json_each(?) AS wanted CROSS JOIN accession ON accession.id = wanted.value
     JOIN variety ON variety.id = variety_id JOIN crop ON crop.id = crop_id`,
  ).all(JSON.stringify(accessionIds)) as PlanCropRow[]
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
