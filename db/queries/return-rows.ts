import { alias } from 'drizzle-orm/sqlite-core'
import type { Sqlite } from '../migrations/connection.ts'
import { person } from '../schema/reference-tables.ts'
import { lot, returnAnswer, returnCheck, seedReturn } from '../schema/stock-tables.ts'
import { both, columns, expression, orNull, pick, type RowOf, select } from './columns.ts'
import { notUndone } from './measurements.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { JOIN_SEED, SEED_NAMES } from './seed-names.ts'

const whole = alias(lot, 'whole')
const BACK = columns({
  on: seedReturn.onDate,
  plants: whole.plantsGrown,
  floweredNear: orNull(returnAnswer.floweredNear),
  nearNote: orNull(returnAnswer.nearNote),
  odd: orNull(returnAnswer.odd),
})

/** How a lot came back, with what was answered at the table; no answers where nobody was asked. */
export type ReturnRow = RowOf<typeof BACK>

/** The return of a lot, or of the whole that it was split from, with what was answered then. */
const JOIN_RETURN = `JOIN seed_return ON seed_return.lot_id IN (
    WITH RECURSIVE part (id) AS (
      SELECT lot.id UNION SELECT parent_lot_id FROM part JOIN lot_parent ON lot_parent.lot_id = part.id AND relation = 'split')
    SELECT id FROM part)
  JOIN lot AS whole ON whole.id = seed_return.lot_id
  LEFT JOIN return_answer ON return_answer.id = (SELECT max(answer.id) FROM return_answer AS answer
    WHERE answer.lot_id = whole.id AND ${notUndone('answer')})`

/** How a lot came back, itself or as a part of what did, or undefined where it did not, or that was taken back. */
export function returnOf(sqlite: Sqlite, lotId: number): ReturnRow | undefined {
  return select(
    sqlite,
    BACK,
    (list) => `SELECT ${list} FROM lot ${JOIN_RETURN}
     WHERE lot.id = ? AND ${notUndone('seed_return')}`,
  ).get(lotId)
}

const who = alias(person, 'who')
const TO_CHECK = both(
  BACK,
  columns({
    lotId: lot.id,
    lotNumber: lot.number,
    ...SEED_NAMES,
    person: who.name,
    reason: expression<string>('lot.quarantine_reason'),
  }),
)

/** Returns and harvests in quarantine that hold seed, parts split off as well, those that wait longest first. */
export function returnsToCheck(sqlite: Sqlite) {
  return select(
    sqlite,
    TO_CHECK,
    (list) => `SELECT ${list} FROM lot ${JOIN_SEED} ${JOIN_RETURN}
     ${joinCanonicalPerson('who', 'seed_return.person_id')}
     WHERE lot.quarantine_reason IS NOT NULL AND lot.holds_seed = 1 AND ${notUndone('seed_return')}
     ORDER BY seed_return.on_date, lot.id`,
  ).all()
}

const CHECK = columns({
  ...pick(returnCheck, 'dry', 'clean', 'trueToType', 'comparedWith', 'outcome', 'note'),
  on: returnCheck.onDate,
})

/** What was found of a return, latest first. */
export function checksOf(sqlite: Sqlite, lotId: number) {
  return select(
    sqlite,
    CHECK,
    (list) => `SELECT ${list} FROM return_check WHERE lot_id = ? AND ${notUndone('return_check')}
     ORDER BY id DESC`,
  ).all(lotId)
}
