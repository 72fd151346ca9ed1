import { alias } from 'drizzle-orm/sqlite-core'
import { refuse } from '../../contract/refusal.ts'
import type { Untold } from '../../contract/told.ts'
import type { SeedPromise, VisitOut } from '../../contract/withdrawal-operations.ts'
import { isoDate } from '../../domain/dates/iso-date.ts'
import { promiseState } from '../../domain/promises/promise.ts'
import { message } from '../../messages/message.ts'
import {
  both,
  columns,
  countOf,
  expression,
  orNull,
  pick,
  type RowOf,
  select,
} from '../../queries/columns.ts'
import { growOutOfVisit, seedBackOf } from '../../queries/grow-out-rows.ts'
import { notUndone } from '../../queries/measurements.ts'
import { canonicalPersonId, isRecordOf, joinCanonicalPerson } from '../../queries/person-records.ts'
import { JOIN_SEED, SEED_NAMES } from '../../queries/seed-names.ts'
import { crop, person, personContact } from '../../schema/reference-tables.ts'
import { lot, promiseWaiver, withdrawal } from '../../schema/stock-tables.ts'
import type { Reading, Reads, Writes } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'

/** The same words as the partial index on withdrawals with a promise, so that it is used. */
const HAS_PROMISE = "(promised <> '' OR promised_by IS NOT NULL OR purpose = 'to-return')"

const WAIVER = `(SELECT reason FROM promise_waiver WHERE withdrawal_id = withdrawal.id
  AND ${notUndone('promise_waiver')} ORDER BY promise_waiver.id DESC LIMIT 1)`

const BROUGHT_BACK = `EXISTS (SELECT 1 FROM seed_return WHERE withdrawal_id = withdrawal.id AND ${notUndone('seed_return')})`

const STILL_WAITED_FOR = `${HAS_PROMISE} AND ${notUndone('withdrawal')} AND NOT ${BROUGHT_BACK} AND ${WAIVER} IS NULL`

const VISIT = columns({
  withdrawalId: withdrawal.id,
  ...pick(withdrawal, 'purpose', 'promised', 'promisedBy'),
  on: withdrawal.onDate,
  returns: expression<0 | 1>(BROUGHT_BACK),
  waiver: expression<string | null>(WAIVER),
})

type VisitRow = RowOf<typeof VISIT>

/** The visits of a person, joined records too: what is still promised first, by its day, then the latest. */
export const listOut: Reads<'withdrawal.list-open'> = (reading, input) => {
  const personId = canonicalPersonId(reading.sqlite, input.personId)
  if (personId === undefined) refuse('not-found', message('promise.no-person'), { field: 'personId' })
  const visits = visitsOf(reading, personId, input.limit)
  const from = `FROM withdrawal WHERE ${isRecordOf('person_id')} AND ${notUndone('withdrawal')}`
  return { visits, total: countOf(reading.sqlite, from, personId, personId) }
}

/** Visits of a kept person, at most so many. */
export function visitsOf(reading: Reading, personId: number, limit: number): Untold<VisitOut>[] {
  const rows = select(
    reading.sqlite,
    VISIT,
    (list) => `SELECT ${list} FROM withdrawal WHERE ${isRecordOf('person_id')} AND ${notUndone('withdrawal')}
     ORDER BY (${STILL_WAITED_FOR}) DESC,
       CASE WHEN ${STILL_WAITED_FOR} THEN coalesce(promised_by, '9999-12-31') END, on_date DESC, id DESC LIMIT ?`,
  ).all(personId, personId, limit)
  return rows.map((row) => ({
    ...visitShown(reading, row),
    promise: promiseOf(reading, row),
    back: seedBackOf(reading.sqlite, 'withdrawal', row.withdrawalId),
  }))
}

function visitShown(reading: Reading, { withdrawalId, on, purpose }: VisitRow) {
  return { withdrawalId, on, purpose, lots: lotsOut(reading, withdrawalId) }
}

/**
 * Whether days are named by which seed is to come back. Off unless the keeper wants them: what somebody hopes to bring back is no
 * debt, and a return that is required may make a gift a contract in some places (from memory; local rules decide).
 */
export function hasDueDates(reading: Reading): boolean {
  return settingsOf(reading).dueDates
}

function promiseOf(reading: Reading, row: VisitRow): Untold<SeedPromise> | null {
  if (row.promised === '' && row.promisedBy === null && row.purpose !== 'to-return') return null
  const by = row.promisedBy === null || !hasDueDates(reading) ? null : isoDate(row.promisedBy)
  return {
    words: row.promised === '' ? message('promise.some-seed') : row.promised,
    by,
    state: promiseState({ by, broughtBack: row.returns === 1, waived: row.waiver !== null }, reading.today),
    waiverReason: row.waiver ?? '',
  }
}

const LOT_OUT = columns({
  lotId: lot.id,
  lotNumber: lot.number,
  ...SEED_NAMES,
  countedUnit: crop.countedUnit,
  accessionId: lot.accessionId,
  count: expression<number>('-sum(movement.count)'),
})

function lotsOut(reading: Reading, withdrawalId: number): Untold<VisitOut['lots']> {
  const rows = select(
    reading.sqlite,
    LOT_OUT,
    (list) => `SELECT ${list} FROM movement JOIN lot ON lot.id = lot_id ${JOIN_SEED}
     WHERE withdrawal_id = ? GROUP BY lot.id ORDER BY min(movement.id)`,
  ).all(withdrawalId)
  return rows.map(({ countedUnit: unit, accessionId, count, ...seed }) => ({
    ...seed,
    growOut: growOutOfVisit(reading.sqlite, withdrawalId, accessionId) ?? null,
    words: message('amount.seeds', { count, unit }),
  }))
}

const who = alias(person, 'who')
const REMINDER = both(
  VISIT,
  columns({
    personId: orNull(who.id),
    person: orNull(who.name),
    town: orNull(who.town),
    mayWrite: orNull(personContact.mayWrite),
    email: orNull(personContact.email),
    phone: orNull(personContact.phone),
    address: orNull(personContact.address),
  }),
)

export const listPromises: Reads<'promise.list'> = (reading, input) => {
  // Without due dates no day lies before it.
  const asOf = hasDueDates(reading) ? reading.today : ''
  const overdue = `${STILL_WAITED_FOR} AND promised_by < ?`
  const where = input.overdueOnly ? overdue : `${STILL_WAITED_FOR} AND ? IS NOT NULL`
  const rows = select(
    reading.sqlite,
    REMINDER,
    (list) => `SELECT ${list} FROM withdrawal ${joinCanonicalPerson('who', 'withdrawal.person_id')}
     LEFT JOIN person_contact ON person_contact.person_id = who.id
     WHERE ${where} ORDER BY coalesce(promised_by, '9999-12-31'), on_date, withdrawal.id LIMIT ? OFFSET ?`,
  ).all(asOf, input.limit, input.offset)
  const count = (condition: string) => countOf(reading.sqlite, `FROM withdrawal WHERE ${condition}`, asOf)
  return {
    promises: rows.flatMap((row) => {
      const promise = promiseOf(reading, row)
      return promise === null ? [] : [{ ...visitShown(reading, row), ...whoPromised(row), promise }]
    }),
    total: count(where),
    overdue: count(overdue),
  }
}

/** Who promised, and how to reach them where they agreed to be written to. */
function whoPromised(row: RowOf<typeof REMINDER>) {
  const mayWrite = row.mayWrite === 1
  return {
    personId: row.personId,
    person: row.person ?? 'a member',
    town: row.town ?? '',
    mayWrite,
    email: (mayWrite && row.email) || '',
    phone: (mayWrite && row.phone) || '',
    address: (mayWrite && row.address) || '',
  }
}

export const letPromiseGo: Writes<'promise.waive'> = (writing, input) => {
  const field = 'withdrawalId'
  const row = select(
    writing.sqlite,
    VISIT,
    (list) => `SELECT ${list} FROM withdrawal WHERE id = ? AND ${notUndone('withdrawal')}`,
  ).get(input.withdrawalId)
  if (row === undefined) refuse('not-found', message('promise.no-visit'), { field })
  const promise = promiseOf(writing, row)
  if (promise === null) refuse('promise-closed', message('promise.none'), { field })
  if (promise.state === 'met') {
    refuse('promise-closed', message('promise.met'), { field })
  }
  if (promise.state === 'waived') {
    refuse('promise-closed', message('promise.let-go-already', { reason: promise.waiverReason }), { field })
  }
  writing.db
    .insert(promiseWaiver)
    .values({
      withdrawalId: row.withdrawalId,
      onDate: writing.today,
      reason: input.reason,
      entryId: writing.entryId,
    })
    .run()
  const said = message('promise.let-go', { promised: promise.words, on: { day: row.on } })
  return { said, undoable: true }
}
