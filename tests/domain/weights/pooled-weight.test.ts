import { expect, test } from 'vitest'
import { milligrams } from '../../../db/domain/amounts/mass.ts'
import { seedCount } from '../../../db/domain/amounts/seed-count.ts'
import { pooledWeight } from '../../../db/domain/weights/hundred-seed-weight.ts'

const part = (count: number, mass: number, doubt: number) => ({
  count: seedCount(count),
  mass: milligrams(mass),
  doubt,
})

test('all the mass over all the seeds, the doubt seed by seed', () => {
  // 30 g at 25 g and 30 g at 20 g per hundred: 120 and 150 seeds, 60 g; worked out by hand.
  const pooled = pooledWeight([part(120, 30_000, 0.1), part(150, 30_000, 0.01)])
  expect(pooled?.weight).toBe(Math.round((60_000 * 1_000 * 100) / 270))
  expect(pooled?.doubt).toBeCloseTo((12 + 1.5) / 270, 12)
})

test('no order of pouring changes it', () => {
  const parts = [part(120, 30_000, 0.1), part(150, 30_000, 0.01), part(7, 900, 0.3)]
  expect(pooledWeight(parts.toReversed())).toEqual(pooledWeight(parts))
})

test.each([
  ['no seeds', part(0, 500, 0.1)],
  ['no mass', part(5, 0, 0.1)],
])('nothing where there is %s', (_, nothing) => {
  expect(pooledWeight([nothing])).toBeNull()
})

test('a weight is never less than a microgram', () => {
  expect(pooledWeight([part(100_000_000, 1, 0)])?.weight).toBe(1)
})
