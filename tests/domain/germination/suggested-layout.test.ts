import fc from 'fast-check'
import { expect, test } from 'vitest'
import { MOST_SPENT, suggestedLayout } from '../../../db/domain/germination/suggested-layout.ts'

const sum = (layout: readonly number[]) => layout.reduce((total, seeds) => total + seeds, 0)

test.each([
  [2_000, 300, [100, 100, 100, 100]],
  [2_000, 90, [25, 25, 25, 25]],
  [2_000, null, [100, 100, 100, 100]],
  [130, 37, [20]],
  [60, 4, [10]],
  [7, null, [7]],
  [0, null, []],
])('of %i seeds where %s decide: %j', (available, deciding, layout) => {
  expect(suggestedLayout(available, deciding)).toEqual(layout)
})

test('never suggests more than there is, nor more than a fifth where the lot holds fifty', () => {
  fc.assert(
    fc.property(fc.nat(5_000), fc.option(fc.integer({ min: 1, max: 400 })), (available, deciding) => {
      const seeds = sum(suggestedLayout(available, deciding))
      expect(seeds).toBeLessThanOrEqual(available)
      if (available >= 50) expect(seeds).toBeLessThanOrEqual(available * MOST_SPENT)
    }),
  )
})
