import { alias } from 'drizzle-orm/sqlite-core'
import type { SeedStep } from '../domain/trace/trace.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { crop, person, personContact } from '../schema/reference-tables.ts'
import { lot, lotParent, movement } from '../schema/stock-tables.ts'
import { type Columns, columns, expression, orNull, pick, type RowOf, select } from './columns.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { JOIN_SEED, SEED_NAMES } from './seed-names.ts'

const STEP: Columns<SeedStep> = columns({
  fromLotId: lotParent.parentLotId,
  toLotId: lotParent.lotId,
  by: lotParent.relation,
  entryId: expression<number>('coalesce(filled.entry_id, lot.entry_id)'),
  leftBy: expression<number>('coalesce(filled.entry_id, sown.entry_id, lot.entry_id)'),
})

/** How seed went from lot to lot within an accession, which no seed leaves this way; what was taken back is not there. */
export function stepsOfAccession(sqlite: Sqlite, accessionId: number): SeedStep[] {
  return select(
    sqlite,
    STEP,
    (list) => `SELECT DISTINCT ${list} FROM lot JOIN lot_parent ON lot_parent.lot_id = lot.id
     LEFT JOIN movement AS filled ON relation = 'merged' AND filled.lot_id = lot.id AND filled.kind = 'merge'
       AND EXISTS (SELECT 1 FROM movement AS poured
         WHERE poured.entry_id = filled.entry_id AND poured.lot_id = parent_lot_id AND poured.kind = 'merge')
     LEFT JOIN seed_return ON relation = 'grown' AND seed_return.lot_id = lot.id
     LEFT JOIN movement AS sown ON sown.withdrawal_id = seed_return.withdrawal_id AND sown.lot_id = parent_lot_id
       AND sown.kind = 'withdrawal'
     WHERE lot.accession_id = ? AND ${notUndone('lot')}
       AND (relation <> 'merged' OR filled.id IS NOT NULL AND ${notUndone('filled')})`,
  ).all(accessionId)
}

const who = alias(person, 'who')
const HAND_OUT = columns({
  ...pick(movement, 'lotId', 'entryId', 'withdrawalId'),
  on: movement.onDate,
  count: expression<number>('-movement.count'),
  lotNumber: lot.number,
  ...SEED_NAMES,
  countedUnit: crop.countedUnit,
  personId: orNull(who.id),
  name: orNull(who.name),
  town: orNull(who.town),
  mayWrite: orNull(personContact.mayWrite),
  email: orNull(personContact.email),
  phone: orNull(personContact.phone),
  address: orNull(personContact.address),
})

/** Seed of a lot that went out on a visit. */
export type HandOutRow = RowOf<typeof HAND_OUT>

/** What went out of some lots and was not taken back, in the order of its days. */
export function handOutsOf(sqlite: Sqlite, lotIds: readonly number[]): HandOutRow[] {
  return select(
    sqlite,
    HAND_OUT,
    (list) => `SELECT ${list} FROM json_each(?) AS wanted
     CROSS JOIN movement ON movement.lot_id = wanted.value AND movement.kind = 'withdrawal'
     JOIN withdrawal ON withdrawal.id = movement.withdrawal_id JOIN lot ON lot.id = movement.lot_id ${JOIN_SEED}
     ${joinCanonicalPerson('who', 'withdrawal.person_id')}
     LEFT JOIN person_contact ON person_contact.person_id = who.id
     WHERE NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id)
     ORDER BY movement.on_date, movement.id`,
  ).all(JSON.stringify(lotIds))
}
