import { alias } from 'drizzle-orm/sqlite-core'
import type { Sqlite } from '../migrations/connection.ts'
import { crop, person } from '../schema/reference-tables.ts'
import { institutionReport, institutionRequest, lot, withdrawal } from '../schema/stock-tables.ts'
import { columns, expression, orNull, pick, type RowOf, select } from './columns.ts'
import { notUndone } from './measurements.ts'
import { isRecordOf, joinCanonicalPerson } from './person-records.ts'
import { JOIN_SEED, SEED_NAMES } from './seed-names.ts'

const who = alias(person, 'who')
const REQUEST = columns({
  withdrawalId: withdrawal.id,
  on: withdrawal.onDate,
  ...pick(withdrawal, 'purpose'),
  personId: orNull(who.id),
  institution: orNull(who.name),
  ...pick(institutionRequest, 'askedOn', 'intendedUse', 'agreement', 'plantHealth', 'sentOn'),
  reports: expression<number>(
    `(SELECT count(*) FROM institution_report WHERE institution_report.withdrawal_id = withdrawal.id
      AND ${notUndone('institution_report')})`,
  ),
})

export type RequestRow = RowOf<typeof REQUEST>

/** The standing hand-outs with a request in force, latest first; of one kept person, or of all where it is null. */
export function requestRows(sqlite: Sqlite, personId: number | null): RequestRow[] {
  const read = select(
    sqlite,
    REQUEST,
    (list) => `SELECT ${list} FROM withdrawal
     JOIN institution_request ON institution_request.id = (
       SELECT max(id) FROM institution_request AS noted
       WHERE noted.withdrawal_id = withdrawal.id AND ${notUndone('noted')})
     ${joinCanonicalPerson('who', 'withdrawal.person_id')}
     WHERE ${notUndone('withdrawal')} ${personId === null ? '' : `AND ${isRecordOf('withdrawal.person_id')}`}
     ORDER BY withdrawal.on_date DESC, withdrawal.id DESC`,
  )
  return personId === null ? read.all() : read.all(personId, personId)
}

const REPORT = columns({ on: institutionReport.onDate, ...pick(institutionReport, 'note') })

/** What was reported back on a hand-out, latest first. */
export function reportsOf(sqlite: Sqlite, withdrawalId: number) {
  return select(
    sqlite,
    REPORT,
    (
      list,
    ) => `SELECT ${list} FROM institution_report WHERE withdrawal_id = ? AND ${notUndone('institution_report')}
     ORDER BY on_date DESC, id DESC`,
  ).all(withdrawalId)
}

const OUT = columns({
  lotId: lot.id,
  lotNumber: lot.number,
  ...SEED_NAMES,
  countedUnit: crop.countedUnit,
  count: expression<number>('-sum(movement.count)'),
})

/** The lots that went out on a visit, each once, with how many seeds. */
export function lotsOfVisit(sqlite: Sqlite, withdrawalId: number) {
  return select(
    sqlite,
    OUT,
    (list) => `SELECT ${list} FROM movement JOIN lot ON lot.id = lot_id ${JOIN_SEED}
     WHERE withdrawal_id = ? GROUP BY lot.id ORDER BY min(movement.id)`,
  ).all(withdrawalId)
}
