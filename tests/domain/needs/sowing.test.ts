import fc from 'fast-check'
import { expect, test } from 'vitest'
import { NOTHING_SAID } from '../../../db/domain/keeping/keeping.ts'
import { needState } from '../../../db/domain/needs/need.ts'
import { regrowingsLeft, seedsToSow, sowingAdvice } from '../../../db/domain/needs/sowing.ts'

const lot = (lotId: number, seeds: number, viability: number) => ({
  lotId,
  lotNumber: `HL-${lotId}`,
  seeds,
  viability,
  deviation: 0,
})

const POLICY = { regrowings: 3, plants: 10, emergence: 0.8 }

test.each([
  [10, 0.9, 0.8, 14],
  [60, 0.5, 0.5, 240],
  [3, 0.75, 1, 4],
  [10, 0, 0.8, null],
  [10, 0.9, 0, null],
])('%s plants, %s alive, %s emergence: %s seeds', (plants, viability, emergence, seeds) => {
  expect(seedsToSow(plants, viability, emergence)).toBe(seeds)
})

test('the lot with most living seed is sown alone where it is enough', () => {
  expect(sowingAdvice([lot(1, 40, 0.5), lot(2, 30, 0.9)], POLICY)).toEqual({
    lots: [{ lotId: 2, lotNumber: 'HL-2', seeds: 14 }],
    seeds: 14,
    enough: true,
    expected: expect.closeTo(10.08, 9),
    chance: expect.closeTo(0.67, 1),
  })
})

test('several lots together, where none alone is enough: the best one whole and of the next what is missing', () => {
  // 10 x 0.9 x 0.8 = 7.2 plants of the first; 2.8 / (0.8 x 0.8) = 4.4 seeds of the second.
  expect(sowingAdvice([lot(1, 9, 0.8), lot(2, 10, 0.9), lot(3, 2, 0.9)], POLICY)).toEqual({
    lots: [
      { lotId: 2, lotNumber: 'HL-2', seeds: 10 },
      { lotId: 1, lotNumber: 'HL-1', seeds: 5 },
    ],
    seeds: 15,
    enough: true,
    expected: expect.closeTo(10.4, 9),
    chance: expect.closeTo(0.7, 1),
  })
})

test('where all together are too few, two thirds of the best are risked and the rest stays', () => {
  expect(sowingAdvice([lot(1, 6, 0.9), lot(2, 3, 0.9)], POLICY)).toEqual({
    lots: [{ lotId: 1, lotNumber: 'HL-1', seeds: 4 }],
    seeds: 4,
    enough: false,
    expected: expect.closeTo(2.88, 9),
    chance: 0,
  })
})

test('of dead or spent lots nothing is sown', () => {
  expect(sowingAdvice([lot(1, 50, 0), lot(2, 0, 0.9)], POLICY)).toBeNull()
  expect(sowingAdvice([], POLICY)).toBeNull()
})

test('whole regrowings are counted', () => {
  expect(regrowingsLeft(37, POLICY)).toBe(2)
})

test('an accession stands at rescue exactly where its lots make no full sowing, and then at most two thirds of a lot go', () => {
  const lots = fc.array(
    fc.record({
      seeds: fc.integer({ min: 0, max: 60 }),
      viability: fc.double({ min: 0, max: 1, noNaN: true }),
    }),
    { minLength: 1, maxLength: 4 },
  )
  fc.assert(
    fc.property(lots, fc.integer({ min: 1, max: 60 }), (held, plants) => {
      const policy = { ...POLICY, plants }
      const sow = sowingAdvice(
        held.map(({ seeds, viability }, index) => lot(index, seeds, viability)),
        policy,
      )
      const about = Math.round(held.reduce((sum, { seeds, viability }) => sum + seeds * viability, 0))
      const living = { about, low: about, high: about, total: about }
      const state = needState({
        living,
        policy,
        testedViability: null,
        threshold: 0.85,
        untested: 0,
        notCounted: 1,
        keeping: NOTHING_SAID,
        unit: 'seed',
      })
      expect(sow?.enough ?? false).toBe(state !== 'rescue')
      for (const { lotId, seeds } of sow?.lots ?? []) {
        const all = held[lotId]?.seeds ?? 0
        expect(seeds).toBeLessThanOrEqual(sow?.enough ? all : Math.max(1, Math.floor((2 * all) / 3)))
      }
    }),
  )
})
