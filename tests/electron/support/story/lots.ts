import { TODAY } from '../../../builders/temporary-collection.ts'
import { key, lot, type Step, step } from './step.ts'

/** Lots are split, joined, moved and tested. */
export function lots(): readonly Step[] {
  return [
    step(
      'lot.split',
      (facts) => ({ ...key(), lotId: lot(facts, 0), on: TODAY, amount: '100 seeds', role: 'working' }),
      (facts, value) => {
        facts.splitLotId = value.newLotId
      },
    ),
    step('lot.merge', (facts) => ({
      ...key(),
      intoLotId: lot(facts, 0),
      fromLotIds: [facts.splitLotId],
      on: TODAY,
    })),
    step('lot.move', (facts) => ({ ...key(), lotIds: [lot(facts, 0)], placeId: facts.placeId, on: TODAY })),
    step('lot.record-count', (facts) => ({
      ...key(),
      lotId: lot(facts, 0),
      on: TODAY,
      found: '240 seeds',
      reason: 'Counted again',
    })),
    step('lot.release', (facts) => ({ ...key(), lotId: lot(facts, 2), checked: 'The dye is food colour' })),
    step('lot.quarantine', (facts) => ({ ...key(), lotId: lot(facts, 2), reason: 'Pests seen in the jar' })),
    step('germination.record', (facts) => ({
      ...key(),
      lotId: lot(facts, 0),
      on: TODAY,
      tested: 50,
      sprouted: 44,
    })),
    step('germination.plan', (facts) => ({ lotId: lot(facts, 0) })),
    step(
      'germination.start',
      (facts) => ({
        ...key(),
        lotId: lot(facts, 0),
        on: '2026-03-05',
        replicates: [10, 10],
        medium: 'rolled paper towel',
        fromStock: false,
        firstDay: 5,
        finalDay: 9,
      }),
      (facts, value) => {
        facts.testId = value.testId
      },
    ),
    step('germination.list', () => ({})),
    step('germination.print', () => ({})),
    step('germination.record-count', (facts) => ({
      ...key(),
      testId: facts.testId,
      on: TODAY,
      replicates: [{ normal: 9 }, { normal: 8, dead: 1 }],
    })),
    step('germination.get', (facts) => ({ testId: facts.testId })),
    step('germination.finish', (facts) => ({ ...key(), testId: facts.testId, on: TODAY })),
    step('germination.list-due', () => ({ withinDays: 4_000 })),
    step(
      'germination.start',
      (facts) => ({ ...key(), lotId: lot(facts, 0), on: TODAY, replicates: [10], finalDay: 9 }),
      (facts, value) => {
        facts.testId = value.testId
      },
    ),
    step('germination.cancel', (facts) => ({
      ...key(),
      testId: facts.testId,
      on: TODAY,
      reason: 'Laid out by mistake',
      seedsBack: true,
    })),
    step(
      'lot.discard',
      (facts) => ({ ...key(), lotId: lot(facts, 2), on: TODAY, amount: 'everything', reason: 'Pests' }),
      (facts, value) => {
        facts.entryId = value.entryId
      },
    ),
    step('entry.undo', (facts) => ({ ...key(), entryId: facts.entryId })),
    step('entry.list', () => ({})),
  ]
}
