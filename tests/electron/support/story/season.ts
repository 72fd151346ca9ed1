import { TODAY } from '../../../builders/temporary-collection.ts'
import { key, type Step, step } from './step.ts'

/** What to regrow, where, and what became of it. */
export function season(): readonly Step[] {
  return [
    step('regeneration.list', () => ({ text: 'ferry' })),
    step('regeneration.get', (facts) => ({ accessionId: facts.accessionId })),
    step(
      'season-list.create',
      (facts) => ({ ...key(), chosen: [facts.accessionId], note: 'First season' }),
      (facts, value) => {
        facts.listId = value.listId
      },
    ),
    step(
      'site.change',
      () => ({ ...key(), name: 'Allotment 12', growerId: null, areaM2: 30, mostVarieties: 4 }),
      (facts, value) => {
        facts.siteId = value.siteId
      },
    ),
    step('site.list', () => ({})),
    step('season-plan.preview', (facts) => ({ accessionIds: [facts.accessionId], seconds: 2 })),
    step('season-plan.check', (facts) => ({
      choices: [{ accessionId: facts.accessionId, siteId: facts.siteId }],
    })),
    step('season-plan.create', (facts) => ({
      ...key(),
      choices: [{ accessionId: facts.accessionId, siteId: facts.siteId }],
    })),
    step('season-plan.get', () => ({})),
    step(
      'grow-out.list',
      () => ({}),
      (facts, value) => {
        facts.growOutId = value.growOuts[0]?.growOutId ?? 0
      },
    ),
    step('grow-out.record', (facts) => ({
      ...key(),
      growOutId: facts.growOutId,
      kind: 'sown',
      on: TODAY,
      plants: 30,
    })),
    step('season-plan.print', (facts) => ({ siteId: facts.siteId })),
    step('season-list.list', () => ({})),
    step('season-list.get', (facts) => ({ listId: facts.listId })),
  ]
}
