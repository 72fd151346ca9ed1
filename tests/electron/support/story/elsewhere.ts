import { TODAY } from '../../../builders/temporary-collection.ts'
import { key, lot, type Step, step } from './step.ts'

/** A duplicate goes out and comes home, an institution reports back, and the sheet for a fire is printed. */
export function elsewhere(): readonly Step[] {
  return [
    step(
      'lot.split',
      (facts) => ({
        ...key(),
        lotId: lot(facts, 0),
        on: TODAY,
        amount: '20 seeds',
        role: 'duplicate-elsewhere',
        heldBy: 'Marrow Bridge seed circle',
        terms: { contact: 'the caretaker', nextLook: '2027-03-01' },
      }),
      (facts, value) => {
        facts.splitLotId = value.newLotId
      },
    ),
    step('duplicate.change', (facts) => ({
      ...key(),
      lotId: facts.splitLotId,
      agreement: 'Signed on paper',
      agreementEnds: '2026-05-01',
    })),
    step('duplicate.list', () => ({})),
    step('duplicate.bring-home', (facts) => ({
      ...key(),
      lotId: facts.splitLotId,
      on: TODAY,
      role: 'reserve',
      placeId: facts.placeId,
    })),
    step('institution.change', (facts) => ({
      ...key(),
      withdrawalId: facts.withdrawalId,
      askedOn: '2026-02-20',
      intendedUse: 'A trial with a class',
      sentOn: TODAY,
    })),
    step('institution.record-report', (facts) => ({
      ...key(),
      withdrawalId: facts.withdrawalId,
      on: TODAY,
      note: 'All of it came up',
    })),
    step('institution.list', () => ({})),
    step('fire-sheet.get', () => ({})),
    step('fire-sheet.render', () => ({})),
    step('fire-sheet.mark-printed', () => ({ ...key(), on: TODAY })),
  ]
}
