import { alias } from 'drizzle-orm/sqlite-core'
import type { Sqlite } from '../migrations/connection.ts'
import { crop, person, storagePlace } from '../schema/reference-tables.ts'
import { accession, lot, lotParent, lotPlace } from '../schema/stock-tables.ts'
import { columns, expression, orNull, pick, type RowOf, select } from './columns.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { JOIN_SEED } from './seed-names.ts'

const grower = alias(person, 'grower')
const donor = alias(person, 'donor')

const FACTS = columns({
  species: crop.species,
  grownAt: expression<string>("CASE lot.grown_at WHEN '' THEN accession.grown_at ELSE lot.grown_at END"),
  ...pick(lot, 'placeId', 'heldBy', 'heldSince'),
  grower: orNull(grower.name),
  donorId: orNull(donor.id),
  creditAs: orNull(donor.creditAs),
  ...pick(accession, 'receivedOn', 'donorWords', 'story', 'terms'),
})

/** What the record of a lot shows beside its row of the shelf. */
export type LotFacts = RowOf<typeof FACTS>

/** The facts of one lot; the lot must exist. */
export function lotFacts(sqlite: Sqlite, lotId: number): LotFacts {
  return select(
    sqlite,
    FACTS,
    (list) => `SELECT ${list} FROM lot ${JOIN_SEED}
     ${joinCanonicalPerson('grower', 'lot.grower_id')} ${joinCanonicalPerson('donor', 'accession.donor_id')}
     WHERE lot.id = ?`,
  ).get(lotId) as LotFacts
}

const PLACE = columns({ place: storagePlace.path, since: lotPlace.since })

/** Where a lot has lain, latest first. */
export function placeHistoryOf(sqlite: Sqlite, lotId: number) {
  return select(
    sqlite,
    PLACE,
    (list) => `SELECT ${list} FROM lot_place JOIN storage_place ON storage_place.id = place_id
     WHERE lot_id = ? AND ${notUndone('lot_place')} ORDER BY since DESC, lot_place.id DESC`,
  ).all(lotId)
}

const PARENT = columns({ lotId: lot.id, lotNumber: lot.number, relation: lotParent.relation })

/** The lots that a lot came from. */
export function parentsOf(sqlite: Sqlite, lotId: number) {
  return select(
    sqlite,
    PARENT,
    (list) => `SELECT ${list} FROM lot_parent JOIN lot ON lot.id = parent_lot_id
     WHERE lot_id = ? ORDER BY lot.id`,
  ).all(lotId)
}
