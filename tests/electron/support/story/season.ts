import { TODAY } from '../../../builders/temporary-collection.ts'
import { key, type Step, step } from './step.ts'

/** What to regrow, where, and what became of it. */
export function season(): readonly Step[] {
  return [
    step('regrow.needs', () => ({ text: 'ferry' })),
    step('regrow.get', (facts) => ({ accessionId: facts.accessionId })),
    step(
      'season-list.save',
      (facts) => ({ ...key(), chosen: [facts.accessionId], note: 'First season' }),
      (facts, value) => {
        facts.listId = value.listId
      },
    ),
    step(
      'site.save',
      () => ({ ...key(), name: 'Allotment 12', growerId: null, areaM2: 30, mostVarieties: 4 }),
      (facts, value) => {
        facts.siteId = value.siteId
      },
    ),
    step('site.list', () => ({})),
    step('plan.make', (facts) => ({ accessionIds: [facts.accessionId], seconds: 2 })),
    step('plan.check', (facts) => ({
      choices: [{ accessionId: facts.accessionId, siteId: facts.siteId }],
    })),
    step('plan.save', (facts) => ({
      ...key(),
      choices: [{ accessionId: facts.accessionId, siteId: facts.siteId }],
    })),
    step('plan.latest', () => ({})),
    step(
      'grow-out.list',
      () => ({}),
      (facts, value) => {
        facts.growOutId = value.growOuts[0]?.growOutId ?? 0
      },
    ),
    step('grow-out.note', (facts) => ({
      ...key(),
      growOutId: facts.growOutId,
      kind: 'sown',
      on: TODAY,
      plants: 30,
    })),
    step('plan.sheets', (facts) => ({ siteId: facts.siteId })),
    step('season-list.list', () => ({})),
    step('season-list.get', (facts) => ({ listId: facts.listId })),
  ]
}
