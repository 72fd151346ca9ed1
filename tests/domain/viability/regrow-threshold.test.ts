import { expect, test } from 'vitest'
import { partOfAllSeed, regrowThreshold } from '../../../db/domain/viability/regrow-threshold.ts'

const policy = { viabilityThreshold: 0.85, viabilityThresholdOf: 'the-start' } as const

test('a lot is regrown below its own threshold, or else below the collection’s', () => {
  expect(regrowThreshold(0.6, policy)).toEqual({ part: 0.6, of: 'the-start' })
  expect(regrowThreshold(null, policy)).toEqual({ part: 0.85, of: 'the-start' })
})

test('a part of what was alive at the start is less of all seed; where the start is not known it is taken to be all', () => {
  expect(partOfAllSeed({ part: 0.85, of: 'the-start' }, 0.9)).toBeCloseTo(0.765, 12)
  expect(partOfAllSeed({ part: 0.85, of: 'the-start' }, null)).toBe(0.85)
  expect(partOfAllSeed({ part: 0.85, of: 'all-seeds' }, 0.9)).toBe(0.85)
})
