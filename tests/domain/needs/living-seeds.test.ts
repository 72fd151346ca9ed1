import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type LotLife, livingSeeds } from '../../../db/domain/needs/living-seeds.ts'

const tested: LotLife = { count: 250, countDoubt: 0.04, viability: 0.73, viabilityRange: [0.636, 0.807] }
const assumed: LotLife = { count: 100, countDoubt: 0, viability: 0.57, viabilityRange: [0.57, 0.57] }

test('count x viability, with the range that both doubts leave', () => {
  // 250 x 0.73; 250 x 0.96 x 0.636 = 152.64; 250 x 1.04 x 0.807 = 209.82
  expect(livingSeeds([tested])).toEqual({ about: 183, low: 152, high: 210, total: 250 })
})

test('counted seed of an assumed viability has no range, and no seed is lost to binary fractions', () => {
  expect(livingSeeds([assumed])).toEqual({ about: 57, low: 57, high: 57, total: 100 })
  expect(livingSeeds([{ ...assumed, viability: 0.07, viabilityRange: [0.07, 0.07] }])).toMatchObject({
    low: 7,
    high: 7,
  })
})

test('lots are added up, ends as they stand', () => {
  expect(livingSeeds([tested, assumed])).toEqual({ about: 240, low: 209, high: 267, total: 350 })
  expect(livingSeeds([])).toEqual({ about: 0, low: 0, high: 0, total: 0 })
})

test('a doubt beyond the whole count leaves perhaps nothing', () => {
  expect(livingSeeds([{ ...assumed, countDoubt: 1.3 }]).low).toBe(0)
})

test('the middle figure lies in its range, and more seed never means less', () => {
  const life = fc
    .tuple(
      fc.nat(1_000_000),
      fc.double({ min: 0, max: 0.9, noNaN: true }),
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 }),
    )
    .map(([count, countDoubt, parts]): LotLife => {
      const [low = 0, viability = 0, high = 0] = parts.toSorted((a, b) => a - b)
      return { count, countDoubt, viability, viabilityRange: [low, high] }
    })
  fc.assert(
    fc.property(fc.array(life, { maxLength: 6 }), life, (lots, more) => {
      const living = livingSeeds(lots)
      const with_ = livingSeeds([...lots, more])
      expect(living.low).toBeLessThanOrEqual(living.about)
      expect(living.about).toBeLessThanOrEqual(living.high)
      expect(with_.about).toBeGreaterThanOrEqual(living.about)
      expect(with_.low).toBeGreaterThanOrEqual(living.low)
      expect(with_.high).toBeGreaterThanOrEqual(living.high)
    }),
  )
})
