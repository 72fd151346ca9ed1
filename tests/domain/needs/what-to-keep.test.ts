import fc from 'fast-check'
import { expect, test } from 'vitest'
import { seedsForOneRegrowing, seedsToKeep } from '../../../db/domain/needs/what-to-keep.ts'

test.each([
  [3, 60, 0.8, 75, 225],
  [3, 20, 0.8, 25, 75],
  [1, 60, 0.8, 75, 75],
  [3, 50, 0.7, 72, 215],
  [2, 7, 1, 7, 14],
  [3, 10, 0.05, 200, 600],
  [3, 1, 0.9, 2, 4],
  [20, 10_000, 0.1, 100_000, 2_000_000],
])(
  '%s regrowings of %s plants at %s emergence: %s for one, %s in all',
  (regrowings, plants, emergence, one, all) => {
    expect(seedsForOneRegrowing({ regrowings, plants, emergence })).toBe(one)
    expect(seedsToKeep({ regrowings, plants, emergence })).toBe(all)
  },
)

test.each([
  [3, 60, 0],
  [3, 60, -0.1],
  [3, 60, 1.01],
  [3, 60, Number.NaN],
  [3, 0, 0.8],
  [0, 60, 0.8],
])('%s regrowings of %s plants at %s emergence are no policy', (regrowings, plants, emergence) => {
  expect(() => seedsToKeep({ regrowings, plants, emergence })).toThrow(RangeError)
})

test('what is kept is enough, not a seed more, and never more than regrowing by regrowing', () => {
  const policy = fc.record({
    regrowings: fc.integer({ min: 1, max: 20 }),
    plants: fc.integer({ min: 1, max: 10_000 }),
    emergence: fc.integer({ min: 5, max: 100 }).map((percent) => percent / 100),
  })
  fc.assert(
    fc.property(policy, ({ regrowings, plants, emergence }) => {
      const keep = seedsToKeep({ regrowings, plants, emergence })
      const percent = Math.round(100 * emergence)
      expect(keep * percent).toBeGreaterThanOrEqual(100 * regrowings * plants)
      expect((keep - 1) * percent).toBeLessThan(100 * regrowings * plants)
      expect(keep).toBeLessThanOrEqual(regrowings * seedsForOneRegrowing({ regrowings, plants, emergence }))
    }),
    { numRuns: 2_000 },
  )
})
