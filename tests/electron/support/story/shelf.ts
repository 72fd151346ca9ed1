import { TODAY } from '../../../builders/temporary-collection.ts'
import { key, lot, type Step, step } from './step.ts'

/** Gifts come in and are looked at on the shelf, with how they are kept. */
export function shelf(): readonly Step[] {
  return [
    step(
      'intake.record',
      (facts) => ({
        ...key(),
        donor: { personId: facts.personId },
        receivedOn: TODAY,
        gifts: [
          {
            variety: { newVariety: { cropId: 'bean', name: 'Ferry Bean' } },
            amount: '300 seeds',
            harvest: '2024',
          },
          { variety: { varietyId: facts.varietyId }, amount: '80 g', sample: '25 weigh 6.10 g' },
          {
            variety: { newVariety: { cropId: 'bean', name: 'Dyed Bean' } },
            amount: '90 seeds',
            cautions: ['treated'],
          },
        ],
      }),
      (facts, value) => {
        facts.lots.push(...value.taken.map((gift) => gift.lotId))
        facts.accessionId = value.taken[0]?.accessionId ?? 0
      },
    ),
    step('lot.list', () => ({})),
    step('forecast.get', (facts) => ({ lotId: lot(facts, 0) })),
    step('lot.get', (facts) => ({ lotId: lot(facts, 0) })),
    step('lot.set-caution', (facts) => ({
      ...key(),
      lotIds: [lot(facts, 2)],
      caution: 'protected-variety',
      on: TODAY,
    })),
    step('lot.change-container', (facts) => ({
      ...key(),
      lotIds: [lot(facts, 0)],
      kind: 'jar',
      airtight: true,
      pestProof: true,
      since: TODAY,
    })),
    step('moisture.preview', (facts) => ({
      lotId: lot(facts, 0),
      measured: { method: 'sealed-jar', humidity: 35, temperature: 20 },
    })),
    step('moisture.record', (facts) => ({
      ...key(),
      lotId: lot(facts, 0),
      on: TODAY,
      measured: { method: 'break-check', gives: 'bends' },
    })),
    step('place.change-terms', (facts) => ({
      ...key(),
      placeId: facts.placeId,
      aim: 'short-term',
      roundDays: 30,
    })),
    step('round.list-due', () => ({})),
    step('round.print', () => ({})),
    step('round.record', (facts) => ({
      ...key(),
      on: TODAY,
      walkedBy: 'Ilka Brandt',
      places: [{ placeId: facts.placeId, checks: [{ look: 'pests', outcome: 'fine' }] }],
    })),
    step('lot.get-storage', (facts) => ({ lotId: lot(facts, 0) })),
    step('moisture.plan-drying', () => ({ grams: 450, from: 13, to: 7 })),
    step('lot.preview-move', (facts) => ({ lotIds: [lot(facts, 0)], placeId: facts.placeId })),
    step('lot.workbook', (facts) => ({ lotIds: [lot(facts, 0)] })),
    step('lot.export', (facts) => ({ lotIds: [lot(facts, 0)] })),
    step('collection.search', () => ({ text: 'ferry' })),
    step('withdrawal.list-lots', () => ({ text: 'ferry' })),
    step('accession.list-states', () => ({})),
    step('accession.change-policy', (facts) => ({
      ...key(),
      accessionId: facts.accessionId,
      plantsToKeep: 30,
    })),
    step('accession.change-terms', (facts) => ({
      ...key(),
      accessionId: facts.accessionId,
      limits: { mayBeSold: false },
    })),
    step('accession.decide-keeping', (facts) => ({
      ...key(),
      accessionId: facts.accessionId,
      breeding: 'landrace',
      policy: 'keep',
      on: TODAY,
    })),
  ]
}
