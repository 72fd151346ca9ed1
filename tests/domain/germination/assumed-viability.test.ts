import { expect, test } from 'vitest'
import {
  assumedBand,
  assumedViability,
  CAUTIOUS_VIABILITY,
} from '../../../db/domain/germination/assumed-viability.ts'

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

test('what is assumed has a band round it, wider for seed that keeps for fewer years', () => {
  const width = (years: number | null) => {
    const [low, high] = assumedBand(0.7, years)
    expect(low).toBeGreaterThan(0)
    expect(low).toBeLessThan(0.45)
    expect(high).toBeGreaterThan(0.9)
    expect(high).toBeLessThan(1)
    return high - low
  }
  expect(width(4)).toBeLessThan(width(3))
  expect(width(3)).toBeLessThan(width(2))
  expect(width(null)).toBe(width(1))
  expect(width(6)).toBe(width(4))
})
