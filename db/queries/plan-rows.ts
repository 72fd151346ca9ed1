import { alias } from 'drizzle-orm/sqlite-core'
import type { Sqlite } from '../migrations/connection.ts'
import { crop, person } from '../schema/reference-tables.ts'
import { growingSite, siteNeighbour } from '../schema/season-tables.ts'
import { accession } from '../schema/stock-tables.ts'
import { columns, expression, orNull, pick, type RowOf, select } from './columns.ts'
import { notUndone } from './measurements.ts'
import { isRecordOf, joinCanonicalPerson } from './person-records.ts'

const PLAN_CROP = columns({
  accessionId: accession.id,
  crop: crop.commonName,
  ...pick(crop, 'species', 'lifeCycle', 'pollination', 'bedArea', 'laterSowingDays'),
  home: crop.isolationHomeM,
  strict: crop.isolationStrictM,
  homeSource: expression<string | null>("json_extract(crop.reference, '$.sources.isolation_home_m.source')"),
  strictSource: expression<string | null>(
    "json_extract(crop.reference, '$.sources.isolation_strict_m.source')",
  ),
  own: expression<0 | 1>('crop.added_entry_id IS NOT NULL'),
  daysToSeed: expression<number | null>('coalesce(crop.own_days_to_seed, crop.days_to_seed)'),
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

const CROP = { crop: crop.commonName, species: crop.species }
const EVERY_CROP = columns(CROP)

/** Every crop with its botanical name. */
export function everyCrop(sqlite: Sqlite) {
  return select(sqlite, EVERY_CROP, (list) => `SELECT ${list} FROM crop`).all()
}

const who = alias(person, 'who')

const SITE = columns({
  siteId: growingSite.id,
  ...pick(growingSite, 'name', 'areaM2', 'mostVarieties', 'seasonDays', 'takes', 'note'),
  ...pick(growingSite, 'latitude', 'longitude', 'eastM', 'northM'),
  growerId: orNull(who.id),
  grower: orNull(who.name),
})

/** A garden as it lies in the file, with its grower's name. */
export type SiteRow = RowOf<typeof SITE>

/** Every garden, by name. */
export function siteRows(sqlite: Sqlite): SiteRow[] {
  return select(
    sqlite,
    SITE,
    (list) => `SELECT ${list} FROM growing_site ${joinCanonicalPerson('who', 'growing_site.grower_id')}
     ORDER BY growing_site.name, growing_site.id`,
  ).all()
}

const NEIGHBOUR = columns({ ...pick(siteNeighbour, 'siteId', 'cropId', 'metres'), ...CROP })

/** What flowers near each garden. */
export function neighbourRows(sqlite: Sqlite) {
  return select(
    sqlite,
    NEIGHBOUR,
    (list) => `SELECT ${list}
     FROM site_neighbour JOIN crop ON crop.id = crop_id ORDER BY site_id, metres, crop_id`,
  ).all()
}

const GROW_OUTS = columns({
  took: expression<number>('count(*)'),
  back: expression<number>(`coalesce(sum(EXISTS (SELECT 1 FROM seed_return
    WHERE seed_return.withdrawal_id = withdrawal.id AND ${notUndone('seed_return')})), 0)`),
})

/** How often a person took seed to bring some back, and how often some came. */
export function growOutsOf(sqlite: Sqlite, personId: number): RowOf<typeof GROW_OUTS> {
  const found = select(
    sqlite,
    GROW_OUTS,
    (list) => `SELECT ${list} FROM withdrawal
     WHERE ${isRecordOf('person_id')} AND purpose IN ('grow-out', 'to-return') AND ${notUndone('withdrawal')}`,
  ).get(personId, personId)
  return found ?? { took: 0, back: 0 }
}
