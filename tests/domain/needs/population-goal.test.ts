import { expect, test } from 'vitest'
import { breedingOf, plantsFor } from '../../../db/domain/needs/population-goal.ts'

const NONE = {
  matingSystem: 'outcrosser',
  plantsForSeed: null,
  plantsToMaintain: null,
  plantsToConserve: null,
}

test.each([
  ['selfer', 'selfer'],
  ['outcrosser (self-incompatible)', 'outcrosser'],
  ['mixed', 'mixed'],
  [null, 'mixed'],
] as const)('the words ‘%s’ name a %s', (words, breeding) => {
  expect(breedingOf(words)).toBe(breeding)
})

test('the crop table comes first, by grade', () => {
  const maize = { matingSystem: 'outcrosser', plantsForSeed: 10, plantsToMaintain: 50, plantsToConserve: 200 }
  expect(plantsFor(maize, 'quality')).toBe(10)
  expect(plantsFor(maize, 'maintenance')).toBe(50)
  expect(plantsFor(maize, 'conservation')).toBe(200)
})

test('without a figure the breeding system decides', () => {
  expect(plantsFor(NONE, 'conservation')).toBe(100)
  expect(plantsFor({ ...NONE, matingSystem: 'selfer' }, 'conservation')).toBe(20)
  expect(plantsFor({ ...NONE, matingSystem: null }, 'quality')).toBe(2)
})
