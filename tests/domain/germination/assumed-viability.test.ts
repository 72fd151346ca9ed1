import { expect, test } from 'vitest'
import { assumedViability, CAUTIOUS_VIABILITY } from '../../../db/domain/germination/assumed-viability.ts'

test.each([
  [75, 60, 0.75, 'federal-minimum'],
  [75, null, 0.75, 'federal-minimum'],
  [null, 60, 0.6, 'state-minimum'],
  [null, null, 0.5, 'rule-of-thumb'],
])('federal %s, state %s: %s alive by %s', (federalMinimumPercent, stateMinimumPercent, viability, basis) => {
  expect(assumedViability({ federalMinimumPercent, stateMinimumPercent })).toEqual({ viability, basis })
})

test('the rule of thumb is one half', () => {
  expect(CAUTIOUS_VIABILITY).toBe(0.5)
})
