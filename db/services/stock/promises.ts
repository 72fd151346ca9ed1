import type { ParsedInput, Value } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import type { SeedPromise, VisitOut } from '../../contract/withdrawal-operations.ts'
import { countInWords } from '../../domain/amounts/in-words.ts'
import { type CountedUnitName, countedUnit } from '../../domain/crops/counted-unit.ts'
import { isoDate } from '../../domain/dates/iso-date.ts'
import { promiseState } from '../../domain/promises/promise.ts'
import { growOutOfVisit } from '../../queries/grow-out-rows.ts'
import { notUndone } from '../../queries/measurements.ts'
import { canonicalPersonId, isRecordOf, joinCanonicalPerson } from '../../queries/person-records.ts'
import { prepared } from '../../queries/prepared.ts'
import { promiseWaiver } from '../../schema/stock-tables.ts'
import type { Reading, Writing } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'

interface VisitRow {
  readonly id: number
  readonly on_date: string
  readonly purpose: VisitOut['purpose']
  readonly promised: string
  readonly promised_by: string | null
  readonly returns: number
  readonly let_go: string | null
}

/** The same words as the partial index on withdrawals with a promise, so that it is used. */
const HAS_PROMISE = "(promised <> '' OR promised_by IS NOT NULL OR purpose = 'to-return')"

const LET_GO = `(SELECT reason FROM promise_let_go WHERE withdrawal_id = withdrawal.id
  AND ${notUndone('promise_let_go')} ORDER BY promise_let_go.id DESC LIMIT 1)`

const BROUGHT_BACK = `EXISTS (SELECT 1 FROM seed_return WHERE withdrawal_id = withdrawal.id AND ${notUndone('seed_return')})`

const STILL_WAITED_FOR = `${HAS_PROMISE} AND ${notUndone('withdrawal')} AND NOT ${BROUGHT_BACK} AND ${LET_GO} IS NULL`

const VISIT_COLUMNS = `withdrawal.id, on_date, purpose, promised, promised_by, ${BROUGHT_BACK} AS returns, ${LET_GO} AS let_go`

/** The visits of a person, joined records too: what is still promised first, by its day, then the latest. */
export function listOut(
  reading: Reading,
  input: ParsedInput<'withdrawal.list-open'>,
): Value<'withdrawal.list-open'> {
  const personId = canonicalPersonId(reading.sqlite, input.personId)
  if (personId === undefined) refuse('not-found', 'That person is not in the book.', { field: 'personId' })
  const visits = visitsOf(reading, personId, input.limit)
  const where = `${isRecordOf('person_id')} AND ${notUndone('withdrawal')}`
  const total = prepared(reading.sqlite, `SELECT count(*) FROM withdrawal WHERE ${where}`)
  return { visits, total: Number(total.pluck().get(personId, personId)) }
}

/** Visits of a kept person, at most so many. */
export function visitsOf(reading: Reading, personId: number, limit: number): VisitOut[] {
  const rows = prepared(
    reading.sqlite,
    `SELECT ${VISIT_COLUMNS} FROM withdrawal WHERE ${isRecordOf('person_id')} AND ${notUndone('withdrawal')}
     ORDER BY (${STILL_WAITED_FOR}) DESC,
       CASE WHEN ${STILL_WAITED_FOR} THEN coalesce(promised_by, '9999-12-31') END, on_date DESC, id DESC LIMIT ?`,
  ).all(personId, personId, limit) as VisitRow[]
  return rows.map((row) => ({
    ...visitShown(reading, row),
    promise: promiseOf(reading, row),
    back: backOf(reading, row.id),
  }))
}

function visitShown(reading: Reading, row: VisitRow) {
  return { withdrawalId: row.id, on: row.on_date, purpose: row.purpose, lots: lotsOut(reading, row.id) }
}

function promiseOf(reading: Reading, row: VisitRow): SeedPromise | null {
  if (row.promised === '' && row.promised_by === null && row.purpose !== 'to-return') return null
  const by = row.promised_by === null ? null : isoDate(row.promised_by)
  return {
    words: row.promised === '' ? 'some seed' : row.promised,
    by,
    state: promiseState({ by, broughtBack: row.returns === 1, waived: row.let_go !== null }, reading.today),
    waiverReason: row.let_go ?? '',
  }
}

function lotsOut(reading: Reading, withdrawalId: number): VisitOut['lots'] {
  const rows = prepared(
    reading.sqlite,
    `SELECT lot.id AS lotId, lot.number AS lotNumber, variety.name AS variety, crop.common_name AS crop,
       counted_unit, accession.id AS accession_id, -sum(movement.count) AS count
     FROM movement JOIN lot ON lot.id = lot_id JOIN accession ON accession.id = accession_id
     JOIN variety ON variety.id = variety_id JOIN crop ON crop.id = variety.crop_id
     WHERE withdrawal_id = ? GROUP BY lot.id ORDER BY min(movement.id)`,
  ).all(withdrawalId) as {
    lotId: number
    lotNumber: string
    variety: string
    crop: string
    counted_unit: CountedUnitName
    accession_id: number
    count: number
  }[]
  const manner = settingsOf(reading)
  return rows.map(({ counted_unit, accession_id, count, ...lot }) => ({
    ...lot,
    growOut: growOutOfVisit(reading.sqlite, withdrawalId, accession_id) ?? null,
    words: countInWords(count, countedUnit(counted_unit), manner),
  }))
}

function backOf(reading: Reading, withdrawalId: number): VisitOut['back'] {
  return prepared(
    reading.sqlite,
    `SELECT lot.id AS lotId, lot.number AS lotNumber, on_date AS "on" FROM seed_return JOIN lot ON lot.id = lot_id
     WHERE withdrawal_id = ? AND ${notUndone('seed_return')} ORDER BY seed_return.id`,
  ).all(withdrawalId) as VisitOut['back']
}

interface ReminderRow extends VisitRow {
  readonly person_id: number | null
  readonly person: string | null
  readonly town: string | null
  readonly may_write: number | null
  readonly email: string | null
  readonly phone: string | null
  readonly address: string | null
}

export function listPromises(reading: Reading, input: ParsedInput<'promise.list'>): Value<'promise.list'> {
  const overdue = `${STILL_WAITED_FOR} AND promised_by < ?`
  const where = input.overdueOnly ? overdue : `${STILL_WAITED_FOR} AND ? <> ''`
  const rows = prepared(
    reading.sqlite,
    `SELECT ${VISIT_COLUMNS}, who.id AS person_id, who.name AS person, who.town, may_write, email, phone, address
     FROM withdrawal ${joinCanonicalPerson('who', 'withdrawal.person_id')}
     LEFT JOIN person_contact ON person_contact.person_id = who.id
     WHERE ${where} ORDER BY coalesce(promised_by, '9999-12-31'), on_date, withdrawal.id LIMIT ? OFFSET ?`,
  ).all(reading.today, input.limit, input.offset) as ReminderRow[]
  const count = (condition: string) =>
    Number(
      prepared(reading.sqlite, `SELECT count(*) FROM withdrawal WHERE ${condition}`)
        .pluck()
        .get(reading.today),
    )
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
function whoPromised(row: ReminderRow) {
  const mayWrite = row.may_write === 1
  return {
    personId: row.person_id,
    person: row.person ?? 'a member',
    town: row.town ?? '',
    mayWrite,
    email: (mayWrite && row.email) || '',
    phone: (mayWrite && row.phone) || '',
    address: (mayWrite && row.address) || '',
  }
}

export function letPromiseGo(
  writing: Writing,
  input: ParsedInput<'promise.waive'>,
): Omit<Value<'promise.waive'>, 'entryId'> {
  const field = 'withdrawalId'
  const row = prepared(
    writing.sqlite,
    `SELECT ${VISIT_COLUMNS} FROM withdrawal WHERE id = ? AND ${notUndone('withdrawal')}`,
  ).get(input.withdrawalId) as VisitRow | undefined
  if (row === undefined)
    refuse('not-found', 'That hand-out is not in the book, or was taken back.', { field })
  const promise = promiseOf(writing, row)
  if (promise === null) refuse('promise-closed', 'Nothing was promised on that visit.', { field })
  if (promise.state === 'met') {
    refuse('promise-closed', 'Seed came back for that promise already: it is met.', { field })
  }
  if (promise.state === 'let-go') {
    refuse('promise-closed', `That promise was let go already: ${promise.waiverReason}.`, { field })
  }
  writing.db
    .insert(promiseWaiver)
    .values({
      withdrawalId: row.id,
      onDate: writing.today,
      reason: input.reason,
      entryId: writing.entryId,
    })
    .run()
  return { said: `Let go: ${promise.words}, promised on ${row.on_date}`, undoable: true }
}
