import { TODAY } from '../../../builders/temporary-collection.ts'
import { key, lot, type Step, step } from './step.ts'

/** Something is found in seed that went out, and it is asked back. */
export function recalls(): readonly Step[] {
  return [
    step('withdrawal.record', (facts) => ({
      ...key(),
      person: { newPerson: { name: 'Isolde Quern', mayWrite: true } },
      on: TODAY,
      lines: [{ lotId: lot(facts, 1), amount: '10 seeds' }],
      despite: ['too-few-left'],
      reason: 'She brings them back',
    })),
    step('lot.trace', (facts) => ({ lotId: lot(facts, 1) })),
    step('recall.preview', (facts) => ({ lotId: lot(facts, 1) })),
    step(
      'recall.record',
      (facts) => ({
        ...key(),
        lotId: lot(facts, 1),
        on: TODAY,
        reason: 'Weevils in the jar',
        advice: 'Freeze the packet for two weeks',
      }),
      (facts, value) => {
        facts.recallId = value.recallId
      },
    ),
    step('recall.list', () => ({})),
    step('recall.get', (facts) => ({ recallId: facts.recallId })),
    step('recall.record-outcome', (facts) => ({
      ...key(),
      recallId: facts.recallId,
      of: { lotId: lot(facts, 1) },
      outcome: 'destroyed',
      on: TODAY,
    })),
    step('recall.export', (facts) => ({ recallId: facts.recallId })),
    step('recall.render-letters', (facts) => ({ recallId: facts.recallId })),
  ]
}
