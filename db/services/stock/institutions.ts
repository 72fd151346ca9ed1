import type { InstitutionTerms, InstitutionVisit } from '../../contract/elsewhere-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import type { Untold } from '../../contract/told.ts'
import { isoDate } from '../../domain/dates/iso-date.ts'
import { openSteps } from '../../domain/elsewhere/open-steps.ts'
import { message } from '../../messages/message.ts'
import { isAny, selectValue } from '../../queries/columns.ts'
import { lotsOfVisit, type RequestRow, reportsOf, requestRows } from '../../queries/institution-rows.ts'
import { notUndone } from '../../queries/measurements.ts'
import { canonicalPersonId } from '../../queries/person-records.ts'
import { insertRow } from '../../queries/rows.ts'
import { institutionReport, institutionRequest, withdrawal } from '../../schema/stock-tables.ts'
import type { Reading, Reads, Writes, Writing } from '../book/context.ts'

export const listInstitutions: Reads<'institution.list'> = (reading, input) => {
  const personId = input.personId === undefined ? null : canonicalPersonId(reading.sqlite, input.personId)
  if (personId === undefined) refuse('not-found', message('promise.no-person'), { field: 'personId' })
  const all = requestRows(reading.sqlite, personId).map((row) => ({ row, steps: stepsOf(reading, row) }))
  const [open, closed] = [
    all.filter(({ steps }) => steps.length > 0),
    all.filter(({ steps }) => steps.length === 0),
  ]
  const wanted = input.openOnly ? open : [...open, ...closed]
  return {
    visits: wanted
      .slice(input.offset, input.offset + input.limit)
      .map(({ row, steps }) => shown(reading, row, steps)),
    total: wanted.length,
    open: open.length,
  }
}

function stepsOf({ today }: Reading, { agreement, sentOn, reports }: RequestRow) {
  return openSteps({ agreement, reports, sentOn: sentOn === null ? null : isoDate(sentOn) }, today)
}

function shown(
  { sqlite }: Reading,
  { reports: _, ...row }: RequestRow,
  steps: ReturnType<typeof openSteps>,
): Untold<InstitutionVisit> {
  return {
    ...row,
    institution: row.institution ?? '',
    lots: lotsOfVisit(sqlite, row.withdrawalId).map(({ countedUnit: unit, count, ...seed }) => ({
      ...seed,
      words: message('amount.seeds', { count, unit }),
    })),
    reports: reportsOf(sqlite, row.withdrawalId),
    open: steps.map((step) => ({
      step,
      words:
        step === 'report'
          ? message('elsewhere.open-report', { sent: { day: row.sentOn ?? row.on } })
          : message(`elsewhere.open-${step}`),
    })),
  }
}

/** Notes what belongs to a hand-out to an institution, under the entry being written. `within`: where its fields stand. */
export function writeRequest(
  writing: Writing,
  withdrawalId: number,
  { askedOn, intendedUse, agreement, plantHealth, sentOn }: InstitutionTerms,
  within = '',
): void {
  refuseDayToCome(writing, askedOn, `${within}askedOn`)
  refuseDayToCome(writing, sentOn, `${within}sentOn`)
  if (askedOn !== null && sentOn !== null && sentOn < askedOn) {
    refuse('days-out-of-order', message('elsewhere.sent-before-asked', { asked: { day: askedOn } }), {
      field: `${within}sentOn`,
    })
  }
  const row = { withdrawalId, askedOn, intendedUse, agreement, plantHealth, sentOn }
  insertRow(writing.sqlite, institutionRequest, { ...row, entryId: writing.entryId })
}

/** They may have asked before the seed was in the book, so that the rule for days on which something happened to a lot does not fit. */
function refuseDayToCome({ today }: Writing, day: string | null, field: string): void {
  if (day === null || day <= today) return
  refuse('day-not-come', message('book.day-to-come', { day: { day } }), {
    field,
    todo: message('book.day-to-come-todo'),
  })
}

/** The day of a hand-out that stands, or a refusal. */
function visitDayOrRefuse({ sqlite }: Writing, withdrawalId: number): string {
  const day = selectValue(
    sqlite,
    withdrawal.onDate,
    (on) => `SELECT ${on} FROM withdrawal WHERE id = ? AND ${notUndone('withdrawal')}`,
  ).get(withdrawalId)
  return day ?? refuse('not-found', message('promise.no-visit'), { field: 'withdrawalId' })
}

export const changeInstitution: Writes<'institution.change'> = (writing, input) => {
  const on = visitDayOrRefuse(writing, input.withdrawalId)
  writeRequest(writing, input.withdrawalId, input)
  return { said: message('elsewhere.request-noted', { on: { day: on } }), undoable: true }
}

export const recordReport: Writes<'institution.record-report'> = (writing, input) => {
  const { withdrawalId, note } = input
  const on = visitDayOrRefuse(writing, withdrawalId)
  if (!isRequested(writing, withdrawalId)) {
    refuse('not-found', message('elsewhere.no-institution'), {
      field: 'withdrawalId',
      todo: message('elsewhere.no-institution-todo'),
    })
  }
  if (input.on < on) {
    refuse('days-out-of-order', message('elsewhere.report-too-early', { on: { day: on } }), { field: 'on' })
  }
  insertRow(writing.sqlite, institutionReport, {
    withdrawalId,
    onDate: input.on,
    note,
    entryId: writing.entryId,
  })
  return { said: message('elsewhere.report-noted', { on: { day: on } }), undoable: true }
}

function isRequested({ sqlite }: Writing, withdrawalId: number): boolean {
  const from = `FROM institution_request WHERE withdrawal_id = ? AND ${notUndone('institution_request')}`
  return isAny(sqlite, from, withdrawalId)
}
