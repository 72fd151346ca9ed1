import { alias } from 'drizzle-orm/sqlite-core'
import type { SharedSeed } from '../domain/needs/origins.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { crop, person } from '../schema/reference-tables.ts'
import { lot, lotParent } from '../schema/stock-tables.ts'
import {
  type Columns,
  columns,
  expression,
  orNull,
  pick,
  type RowOf,
  select,
  selectValue,
} from './columns.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { accessionsFound } from './search-words.ts'

/** Seed given to members counts as demand; grow-outs, duplicates and tests do not. */
const TAKEN = `movement.kind = 'withdrawal' AND coalesce(withdrawal.purpose, 'to-grow') IN ('to-grow', 'to-return')
  AND NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id)`

const TAKEN_SEEDS = expression<number>('-sum(movement.count)')
const DEMAND = columns({ accessionId: lot.accessionId, seeds: TAKEN_SEEDS })

/** Seeds that members took of some accessions from a day on, in no order; none of those of which they took nothing. */
export function takenSince(sqlite: Sqlite, since: string, accessionIds: readonly number[]) {
  return select(
    sqlite,
    DEMAND,
    (list) => `SELECT ${list}
     FROM json_each(@wanted) AS wanted CROSS JOIN lot ON lot.accession_id = wanted.value
       CROSS JOIN movement INDEXED BY movement_out ON movement.lot_id = lot.id
       LEFT JOIN withdrawal ON withdrawal.id = movement.withdrawal_id
     WHERE movement.on_date >= @since AND ${TAKEN} GROUP BY lot.accession_id`,
  ).all({ wanted: JSON.stringify(accessionIds), since })
}

/** That a row of lot_parent tells of shared seed: split off, or poured in and not taken back since. */
export const SHARES_SEED = `(relation = 'split' OR relation = 'merged' AND EXISTS (
       SELECT 1 FROM movement AS merged CROSS JOIN movement AS filled ON filled.entry_id = merged.entry_id
       WHERE merged.lot_id = parent_lot_id AND merged.kind = 'merge' AND filled.lot_id = lot_parent.lot_id
         AND ${notUndone('merged')}))`

const SHARED: Columns<SharedSeed> = columns(pick(lotParent, 'lotId', 'parentLotId'))

/** Lots of some accessions that share seed with another: split off from it, or with it poured into them; taken back is not merged. */
export function sharedSeed(sqlite: Sqlite, accessionIds: readonly number[]): SharedSeed[] {
  return select(
    sqlite,
    SHARED,
    (list) => `SELECT ${list}
     FROM json_each(?) AS wanted CROSS JOIN lot ON lot.accession_id = wanted.value
       CROSS JOIN lot_parent ON lot_parent.lot_id = lot.id
     WHERE ${SHARES_SEED}`,
  ).all(JSON.stringify(accessionIds))
}

const YEAR = columns({
  year: expression<number>('CAST(substr(movement.on_date, 1, 4) AS INTEGER)'),
  seeds: TAKEN_SEEDS,
})

/** Seeds that members took of one accession, by year, latest first. */
export function takenByYear(sqlite: Sqlite, accessionId: number) {
  return select(
    sqlite,
    YEAR,
    (list) => `SELECT ${list}
     FROM movement JOIN lot ON lot.id = movement.lot_id
     LEFT JOIN withdrawal ON withdrawal.id = movement.withdrawal_id
     WHERE lot.accession_id = ? AND ${TAKEN} GROUP BY year ORDER BY year DESC`,
  ).all(accessionId)
}

/** The accessions that a full-text question finds. */
export function accessionsMatching(sqlite: Sqlite, match: string): Set<number> {
  return new Set(accessionsFound(sqlite).all(match))
}

const GENERATION = columns({
  ...pick(lot, 'generation'),
  lotId: lot.id,
  lotNumber: lot.number,
  plants: lot.plantsGrown,
  parentLotId: orNull(lotParent.parentLotId),
})

/** Every lot of an accession with the lot it was grown, split or joined from; a lot of two parents comes twice. */
export function generationsOf(sqlite: Sqlite, accessionId: number) {
  return select(
    sqlite,
    GENERATION,
    (list) => `SELECT ${list} FROM lot LEFT JOIN lot_parent ON lot_parent.lot_id = lot.id
     WHERE lot.accession_id = ? ORDER BY lot.ordinal, lot_parent.parent_lot_id`,
  ).all(accessionId)
}

const donor = alias(person, 'donor')
const who = alias(person, 'who')
const MEMBER = columns({ name: who.name, last: expression<string>('max(withdrawal.on_date)') })

/** Who may still have seed of an accession: its donor, and members who took it in the last years. */
export function peopleWithSeed(sqlite: Sqlite, accessionId: number, since: string) {
  const gaveIt = selectValue(
    sqlite,
    donor.name,
    (name) => `SELECT ${name} FROM accession ${joinCanonicalPerson('donor', 'accession.donor_id')}
     WHERE accession.id = ? AND donor.name IS NOT NULL`,
  ).get(accessionId)
  const members = select(
    sqlite,
    MEMBER,
    (list) => `SELECT ${list} FROM withdrawal
     JOIN movement ON movement.withdrawal_id = withdrawal.id JOIN lot ON lot.id = movement.lot_id
     ${joinCanonicalPerson('who', 'withdrawal.person_id')}
     WHERE lot.accession_id = ? AND withdrawal.on_date >= ? AND who.name IS NOT NULL AND ${notUndone('withdrawal')}
     GROUP BY who.id ORDER BY last DESC LIMIT 5`,
  ).all(accessionId, since)
  return { donor: gaveIt ?? null, members }
}

const RESCUE_CROP = columns({
  ...pick(crop, 'family', 'matingSystem', 'plantsForSeed', 'seedExtraction'),
  hard: expression<number>("coalesce(json_extract(crop.reference, '$.germ_hard_seed_possible'), 0)"),
})

/** What the rescue of its seed has to know of the crop of an accession; the accession must exist. */
export function rescueCrop(sqlite: Sqlite, accessionId: number) {
  return select(
    sqlite,
    RESCUE_CROP,
    (list) => `SELECT ${list} FROM accession
     JOIN variety ON variety.id = variety_id JOIN crop ON crop.id = crop_id WHERE accession.id = ?`,
  ).get(accessionId) as RowOf<typeof RESCUE_CROP>
}
