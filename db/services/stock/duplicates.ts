import type { DuplicateTerms } from '../../contract/elsewhere-operations.ts'
import { refuse } from '../../contract/refusal.ts'
import { type IsoDate, isoDate } from '../../domain/dates/iso-date.ts'
import { type DuplicateMatter, duplicateDue } from '../../domain/elsewhere/duplicate-due.ts'
import { type Message, message } from '../../messages/message.ts'
import { duplicateRows, type TermsRow } from '../../queries/duplicate-rows.ts'
import { type LotRow, lotRow } from '../../queries/lot-rows.ts'
import { insertRow } from '../../queries/rows.ts'
import { duplicateTerms } from '../../schema/stock-tables.ts'
import { heldIn } from '../book/amounts.ts'
import { changeLot } from '../book/change-lot.ts'
import type { Reads, Writes, Writing } from '../book/context.ts'
import { lotOrRefuse } from '../book/new-lot.ts'
import { notePlace, placeOrRefuse } from '../book/places.ts'

export const listDuplicates: Reads<'duplicate.list'> = ({ sqlite, today }, input) => {
  const duplicates = duplicateRows(sqlite, input.lotId ?? null).flatMap((terms) => {
    const row = lotRow(sqlite, terms.lotId)
    return row === undefined ? [] : [shown(row, terms, today)]
  })
  return { duplicates, due: duplicates.filter(({ due }) => due.length > 0).length }
}

function shown(row: LotRow, terms: TermsRow, today: IsoDate) {
  const { agreementEnds, nextLook, testedOn, tested, sprouted } = terms
  const days = { agreementEnds: dayOrNull(agreementEnds), nextLook: dayOrNull(nextLook) }
  return {
    lotId: row.lotId,
    lotNumber: row.lotNumber,
    variety: row.variety,
    crop: row.crop,
    quantity: heldIn(row),
    holder: row.heldBy,
    since: terms.heldSince ?? '',
    contact: terms.contact ?? '',
    agreement: terms.agreement ?? '',
    agreementEnds,
    conditions: terms.conditions ?? '',
    nextLook,
    lastTest:
      testedOn === null || tested === null || sprouted === null ? null : { on: testedOn, tested, sprouted },
    due: duplicateDue(days, today).map((matter) => ({ matter, words: dueTold(matter, terms) })),
  }
}

function dayOrNull(day: string | null): IsoDate | null {
  return day === null ? null : isoDate(day)
}

function dueTold(matter: DuplicateMatter, { agreementEnds, nextLook }: TermsRow): Message {
  const day = (matter === 'look' ? nextLook : agreementEnds) ?? ''
  return message(`elsewhere.due-${matter}`, { day: { day } })
}

/** Notes the terms of a safety duplicate under the entry being written. */
export function writeTerms(writing: Writing, lotId: number, terms: DuplicateTerms): void {
  const { contact, agreement, agreementEnds, conditions, nextLook } = terms
  const row = { lotId, contact, agreement, agreementEnds, conditions, nextLook, entryId: writing.entryId }
  insertRow(writing.sqlite, duplicateTerms, row)
}

function duplicateOrRefuse(writing: Writing, lotId: number): LotRow {
  const row = lotOrRefuse(writing, lotId, 'lotId')
  if (row.role === 'duplicate-elsewhere') return row
  return refuse('wrong-role', message('elsewhere.not-a-duplicate', { lot: row.lotNumber }), {
    field: 'lotId',
    todo: message('elsewhere.not-a-duplicate-todo'),
  })
}

export const changeDuplicate: Writes<'duplicate.change'> = (writing, input) => {
  const { lotId, lotNumber } = duplicateOrRefuse(writing, input.lotId)
  writeTerms(writing, lotId, input)
  return { said: message('elsewhere.terms-noted', { lot: lotNumber }), undoable: true }
}

/** Takes a safety duplicate home. Who held it stays in the changes of the lot. */
export const bringHome: Writes<'duplicate.bring-home'> = (writing, input) => {
  const { lotId, lotNumber } = duplicateOrRefuse(writing, input.lotId)
  const place = placeOrRefuse(writing, input.placeId, 'placeId')
  const [terms] = duplicateRows(writing.sqlite, lotId)
  const since = terms?.heldSince ?? ''
  if (input.on < since) {
    refuse('days-out-of-order', message('elsewhere.home-before-away', { since: { day: since } }), {
      field: 'on',
    })
  }
  changeLot(writing, lotId, { role: input.role, heldBy: '', heldSince: null, placeId: place.id })
  notePlace(writing, lotId, place.id, input.on)
  return { said: message('elsewhere.came-home', { lot: lotNumber, place: place.path }), undoable: true }
}
