import { TODAY } from '../../../builders/temporary-collection.ts'
import { key, lot, type Step, step } from './step.ts'

/** Seed goes out, gifts are offered, seed comes back. */
export function table(): readonly Step[] {
  return [
    step('lot.record-weight', (facts) => ({
      ...key(),
      lotId: lot(facts, 1),
      on: TODAY,
      replicates: [
        { seeds: 100, grams: 24.4 },
        { seeds: 100, grams: 24.6 },
      ],
    })),
    step('withdrawal.preview', (facts) => ({ lines: [{ lotId: lot(facts, 0), amount: '2 packets of 25' }] })),
    step('draft.save', () => ({ draftId: 'visit-of-today', kind: 'hand-out', text: '{"lines":[]}' })),
    step('draft.list', () => ({ kind: 'hand-out' })),
    step(
      'withdrawal.record',
      (facts) => ({
        ...key(),
        person: { newPerson: { name: 'Teodor Ash' } },
        on: TODAY,
        lines: [{ lotId: lot(facts, 0), amount: '2 packets of 25' }],
        promised: 'a handful',
        promisedBy: '2026-10-01',
      }),
      (facts, value) => {
        facts.withdrawalId = value.withdrawalId
        facts.memberId = value.personId ?? 0
      },
    ),
    step('withdrawal.list-open', (facts) => ({ personId: facts.memberId })),
    step('promise.list', () => ({})),
    step('promise.waive', (facts) => ({
      ...key(),
      withdrawalId: facts.withdrawalId,
      reason: 'Hail in July',
    })),
    step('paper-sheet.record', (facts) => ({
      ...key(),
      on: TODAY,
      lines: [{ person: null, lotId: lot(facts, 0), amount: '5 seeds' }],
    })),
    step('stocktake.preview', (facts) => ({ lines: [{ lotId: lot(facts, 0), found: '90 g' }] })),
    step('stocktake.record', (facts) => ({
      ...key(),
      on: TODAY,
      reason: 'Spring stocktake',
      lines: [{ lotId: lot(facts, 0), found: '90 g' }],
    })),
    step(
      'gift.offer',
      () => ({
        ...key(),
        donor: null,
        offeredOn: TODAY,
        gift: { variety: { newVariety: { cropId: 'pea', name: 'Dusk Climber' } }, amount: '40 seeds' },
        decision: { kind: 'later', waitsFor: [{ step: 'drying' }] },
      }),
      (facts, { giftId }) => {
        facts.giftId = giftId
      },
    ),
    step('gift.record-step', (facts) => ({
      ...key(),
      giftId: facts.giftId,
      step: 'drying',
      done: true,
      on: TODAY,
    })),
    step('gift.list', () => ({})),
    step('gift.accept', (facts) => ({ ...key(), giftId: facts.giftId, receivedOn: TODAY })),
    step(
      'gift.offer',
      () => ({
        ...key(),
        donor: null,
        offeredOn: TODAY,
        gift: { variety: { newVariety: { cropId: 'pea', name: 'Rook' } }, amount: '40 seeds' },
        decision: { kind: 'later' },
      }),
      (facts, { giftId }) => {
        facts.giftId = giftId
      },
    ),
    step('gift.decline', (facts) => ({ ...key(), giftId: facts.giftId, reason: 'Mouldy' })),
    step('collection.get-revision', () => ({})),
    step('return.preview', (facts) => ({ parentLotId: lot(facts, 0), plantsGrown: 12 })),
    step(
      'return.record',
      (facts) => ({
        ...key(),
        person: { personId: facts.personId },
        parentLotId: lot(facts, 0),
        receivedOn: TODAY,
        amount: '120 seeds',
        plantsGrown: 12,
        floweredNear: 'kept-apart',
        nearNote: 'under fleece',
      }),
      (facts, { taken }) => {
        facts.returnedLotId = taken.lotId
      },
    ),
    step('return.list-to-check', () => ({})),
    step('return.check', (facts) => ({
      ...key(),
      lotId: facts.returnedLotId,
      on: TODAY,
      dry: 'yes',
      outcome: 'pass-on',
      note: 'one pod of another colour',
    })),
    step('lot.end-caution', (facts) => ({
      ...key(),
      lotIds: [facts.returnedLotId],
      caution: 'possible-cross',
      on: TODAY,
      reason: 'grown beside the old seed',
    })),
  ]
}
