import fc from 'fast-check'
import { expect, test } from 'vitest'
import { wilsonInterval } from '../../../db/domain/germination/wilson.ts'

test.each([
  [1, 0],
  [-1, 10],
  [11, 10],
  [1.5, 10],
  [5, 10.5],
  [Number.NaN, 10],
  [5, Number.NaN],
  [5, Number.POSITIVE_INFINITY],
])('%s of %s is no germination result', (sprouted, tested) => {
  expect(() => wilsonInterval(sprouted, tested)).toThrow(RangeError)
})

const result = fc
  .integer({ min: 1, max: 10_000 })
  .chain((tested) => fc.tuple(fc.integer({ min: 0, max: tested }), fc.constant(tested)))

test('the interval holds the observed part and stays within 0 and 1', () => {
  fc.assert(
    fc.property(result, ([sprouted, tested]) => {
      const [low, high] = wilsonInterval(sprouted, tested)
      expect(low).toBeGreaterThanOrEqual(0)
      expect(high).toBeLessThanOrEqual(1)
      expect(low).toBeLessThan(high)
      expect(low).toBeLessThanOrEqual(sprouted / tested)
      expect(high).toBeGreaterThanOrEqual(sprouted / tested)
    }),
  )
})

test('dead and living seeds mirror each other', () => {
  fc.assert(
    fc.property(result, ([sprouted, tested]) => {
      const [low, high] = wilsonInterval(sprouted, tested)
      const [deadLow, deadHigh] = wilsonInterval(tested - sprouted, tested)
      expect(deadLow).toBeCloseTo(1 - high, 12)
      expect(deadHigh).toBeCloseTo(1 - low, 12)
    }),
  )
})

test('ten times the seeds narrow it', () => {
  fc.assert(
    fc.property(result, ([sprouted, tested]) => {
      const [low, high] = wilsonInterval(sprouted, tested)
      const [lowTen, highTen] = wilsonInterval(10 * sprouted, 10 * tested)
      expect(highTen - lowTen).toBeLessThan(high - low)
    }),
  )
})
