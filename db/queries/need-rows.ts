import type { SharedSeed } from '../domain/needs/origins.ts'
import type { SeedExtraction } from '../domain/season-plan/seed-extraction.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { prepared } from './prepared.ts'

/** Seed given to members counts as demand; grow-outs, duplicates and tests do not. */
const TAKEN = `movement.kind = 'withdrawal' AND coalesce(withdrawal.purpose, 'to-grow') IN ('to-grow', 'to-return')
  AND NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id)`

/** Seeds that members took of some accessions from a day on, in no order; none of those of which they took nothing. */
export function takenSince(
  sqlite: Sqlite,
  since: string,
  accessionIds: readonly number[],
): { accession_id: number; seeds: number }[] {
  return prepared(
    sqlite,
    `SELECT lot.accession_id, -sum(movement.count) AS seeds
     FROM json_each(@wanted) AS wanted CROSS JOIN lot ON lot.accession_id = wanted.value
       CROSS JOIN movement INDEXED BY movement_out ON movement.lot_id = lot.id
       LEFT JOIN withdrawal ON withdrawal.id = movement.withdrawal_id
     WHERE movement.on_date >= @since AND ${TAKEN} GROUP BY lot.accession_id`,
  ).all({ wanted: JSON.stringify(accessionIds), since }) as { accession_id: number; seeds: number }[]
}

/** That a row of lot_parent tells of shared seed: split off, or poured in and not taken back since. */
export const SHARES_SEED = `(relation = 'split' OR relation = 'joined' AND EXISTS (
       SELECT 1 FROM movement AS merged CROSS JOIN movement AS filled ON filled.entry_id = merged.entry_id
       WHERE merged.lot_id = parent_lot_id AND merged.kind = 'join' AND filled.lot_id = lot_parent.lot_id
         AND ${notUndone('merged')}))`

/** Lots of some accessions that share seed with another: split off from it, or with it poured into them; taken back is not merged. */
export function sharedSeed(sqlite: Sqlite, accessionIds: readonly number[]): SharedSeed[] {
  return prepared(
    sqlite,
    `SELECT lot_id AS lotId, parent_lot_id AS parentLotId
     FROM json_each(?) AS wanted CROSS JOIN lot ON lot.accession_id = wanted.value
       CROSS JOIN lot_parent ON lot_parent.lot_id = lot.id
     WHERE ${SHARES_SEED}`,
  ).all(JSON.stringify(accessionIds)) as SharedSeed[]
}

/** Seeds that members took of one accession, by year, latest first. */
export function takenByYear(sqlite: Sqlite, accessionId: number): { year: number; seeds: number }[] {
  return prepared(
    sqlite,
    `SELECT CAST(substr(movement.on_date, 1, 4) AS INTEGER) AS year, -sum(movement.count) AS seeds
     FROM movement JOIN lot ON lot.id = movement.lot_id
     LEFT JOIN withdrawal ON withdrawal.id = movement.withdrawal_id
     WHERE lot.accession_id = ? AND ${TAKEN} GROUP BY year ORDER BY year DESC`,
  ).all(accessionId) as { year: number; seeds: number }[]
}

/** The accessions that a full-text question finds. */
export function accessionsMatching(sqlite: Sqlite, match: string): Set<number> {
  const found = prepared(sqlite, 'SELECT rowid FROM accession_search WHERE accession_search MATCH ?')
  return new Set(found.pluck().all(match) as number[])
}

/** A lot of an accession on its way through the generations. */
export interface GenerationRow {
  readonly lot_id: number
  readonly lot_number: string
  readonly generation: number
  readonly plants_grown: number | null
  readonly parent_lot_id: number | null
}

/** Every lot of an accession with the lot it was grown, split or joined from; a lot of two parents comes twice. */
export function generationsOf(sqlite: Sqlite, accessionId: number): GenerationRow[] {
  return prepared(
    sqlite,
    `SELECT lot.id AS lot_id, lot.number AS lot_number, lot.generation, lot.plants_grown, lot_parent.parent_lot_id
     FROM lot LEFT JOIN lot_parent ON lot_parent.lot_id = lot.id
     WHERE lot.accession_id = ? ORDER BY lot.ordinal, lot_parent.parent_lot_id`,
  ).all(accessionId) as GenerationRow[]
}

/** Who may still have seed of an accession: its donor, and members who took it in the last years. */
export function peopleWithSeed(sqlite: Sqlite, accessionId: number, since: string) {
  const donor = prepared(
    sqlite,
    `SELECT donor.name FROM accession ${joinCanonicalPerson('donor', 'accession.donor_id')}
     WHERE accession.id = ? AND donor.name IS NOT NULL`,
  )
    .pluck()
    .get(accessionId) as string | undefined
  const members = prepared(
    sqlite,
    `SELECT who.name, max(withdrawal.on_date) AS last FROM withdrawal
     JOIN movement ON movement.withdrawal_id = withdrawal.id JOIN lot ON lot.id = movement.lot_id
     ${joinCanonicalPerson('who', 'withdrawal.person_id')}
     WHERE lot.accession_id = ? AND withdrawal.on_date >= ? AND who.name IS NOT NULL AND ${notUndone('withdrawal')}
     GROUP BY who.id ORDER BY last DESC LIMIT 5`,
  ).all(accessionId, since) as { name: string; last: string }[]
  return { donor: donor ?? null, members }
}

/** What the rescue of a crop's seed has to know of it. */
export interface RescueCropRow {
  readonly family: string
  readonly mating_system: string | null
  readonly plants_for_seed: number | null
  readonly seed_extraction: SeedExtraction | null
  readonly hard: number
}

/** The crop of an accession; the accession must exist. */
export function rescueCrop(sqlite: Sqlite, accessionId: number): RescueCropRow {
  return prepared(
    sqlite,
    `SELECT crop.family, crop.mating_system, crop.plants_for_seed, seed_extraction,
       coalesce(json_extract(crop.reference, '$.germ_hard_seed_possible'), 0) AS hard
     FROM accession JOIN variety ON variety.id = variety_id JOIN crop ON crop.id = crop_id WHERE accession.id = ?`,
  ).get(accessionId) as RescueCropRow
}
