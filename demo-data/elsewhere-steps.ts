import type { DemoStep } from './demo-book.ts'
import type { RowOf } from './demo-tables.ts'

/** What a holder of a safety duplicate agreed to. */
export function duplicateStep({ where, cells }: RowOf<'duplicates'>): DemoStep {
  const {
    lot,
    on,
    contact,
    agreement,
    agreement_ends: agreementEnds,
    conditions,
    next_look: nextLook,
  } = cells
  return {
    on,
    where,
    write: (book) => {
      const terms = { contact, agreement, agreementEnds, conditions, nextLook }
      return book.write('duplicate.change', `duplicate-${lot}-${on}`, {
        lotId: book.idOf('lot', lot),
        ...terms,
      })
    },
  }
}

/** What belongs to a hand-out to an institution, and what it reported back. */
export function institutionSteps({ where, cells }: RowOf<'institutions'>): DemoStep[] {
  const { visit, on, asked_on: askedOn, intended_use: intendedUse, agreement, report } = cells
  const { plant_health: plantHealth, sent_on: sentOn, reported_on: reportedOn } = cells
  const asked: DemoStep = {
    on,
    where,
    write: (book) => {
      const terms = { askedOn, intendedUse, agreement, plantHealth, sentOn }
      const withdrawalId = book.idOf('visit', visit)
      return book.write('institution.change', `institution-${visit}`, { withdrawalId, ...terms })
    },
  }
  if (reportedOn === null) return [asked]
  const reported: DemoStep = {
    on: reportedOn,
    where,
    write: (book) => {
      const facts = { withdrawalId: book.idOf('visit', visit), on: reportedOn, note: report }
      return book.write('institution.record-report', `institution-report-${visit}`, facts)
    },
  }
  return [asked, reported]
}
