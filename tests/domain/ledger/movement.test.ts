import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  afterChange,
  bothNumbers,
  NOTHING,
  recountChange,
  stocktakeChange,
  takeOut,
} from '../../../db/domain/ledger/movement.ts'
import {
  countFromMass,
  hundredSeedWeightFromGrams,
  massFromCount,
} from '../../../db/domain/weights/hundred-seed-weight.ts'
import { aBalance, anyAmount, anyWeight, counted, guessed, weighed } from '../../builders/domain-values.ts'

/** Beans of 244 mg. */
const BEAN = hundredSeedWeightFromGrams(24.4)
/** Seeds of exactly 10 mg. */
const TEN_MG = hundredSeedWeightFromGrams(1)
/** Celery: two and a half seeds to the milligram. */
const CELERY = hundredSeedWeightFromGrams(0.04)

test('an amount has both numbers: the observed one as given, the other derived', () => {
  expect(bothNumbers(weighed(6_100), BEAN)).toEqual(aBalance(25, 6_100))
  expect(bothNumbers(counted(25), BEAN)).toEqual(aBalance(25, 6_100))
  expect(bothNumbers(guessed(200), BEAN)).toEqual(aBalance(200, 48_800))
})

describe('taking seed out', () => {
  test('counted seeds leave as counted, with their derived mass', () => {
    expect(takeOut(aBalance(100, 24_400), counted(25), BEAN)).toEqual({
      kind: 'allowed',
      change: { count: -25, mass: -6_100 },
      left: aBalance(75, 18_300),
      measured: 'count',
    })
  })

  test('weighed seed leaves as weighed, with its derived count', () => {
    expect(takeOut(aBalance(100, 24_400), weighed(6_200), BEAN)).toEqual({
      kind: 'allowed',
      change: { count: -25, mass: -6_200 },
      left: aBalance(75, 18_200),
      measured: 'mass',
    })
  })

  test('a guess is booked as a guess', () => {
    expect(takeOut(aBalance(100, 24_400), guessed(25), BEAN)).toMatchObject({ measured: 'estimate' })
  })

  test.each([
    ['more seeds than the book has', counted(101)],
    ['more mass than the book has', weighed(24_401)],
    ['a guess beyond the book', guessed(400)],
  ])('%s: refused with what was asked and what there is', (_, amount) => {
    const balance = aBalance(100, 24_400)
    expect(takeOut(balance, amount, BEAN)).toEqual({
      kind: 'not-enough',
      asked: bothNumbers(amount, BEAN),
      balance,
    })
  })

  test('nothing comes out of an empty lot', () => {
    expect(takeOut(NOTHING, counted(1), BEAN).kind).toBe('not-enough')
    expect(takeOut(NOTHING, weighed(1), BEAN).kind).toBe('not-enough')
  })

  test.each([
    ['all seeds', counted(100)],
    ['all mass', weighed(24_350)],
  ])('%s: the lot is empty in both numbers, whatever rounding left in the other', (_, amount) => {
    expect(takeOut(aBalance(100, 24_350), amount, BEAN)).toMatchObject({
      change: { count: -100, mass: -24_350 },
      left: NOTHING,
    })
  })

  test('counted seeds are booked as counted though the book would run out of their mass first', () => {
    // 80 seeds should weigh 800 mg; rounding has left the book with 790.
    expect(takeOut(aBalance(80, 790), counted(79), TEN_MG)).toMatchObject({
      change: { count: -79, mass: -780 },
      left: aBalance(1, 10),
    })
  })

  test('weighed seed is booked as weighed though the book would run out of its count first', () => {
    // 840 mg should be 84 seeds; rounding has left the book with 80.
    expect(takeOut(aBalance(80, 840), weighed(820), TEN_MG)).toMatchObject({
      change: { count: -78, mass: -820 },
      left: aBalance(2, 20),
    })
  })

  test('a remainder that is less than half a seed is no seed', () => {
    expect(takeOut(aBalance(10, 2_440), weighed(2_400), BEAN)).toMatchObject({ left: aBalance(0, 40) })
  })

  test('a change of nothing is zero, not minus zero', () => {
    const out = takeOut(aBalance(250, 100), counted(1), CELERY)
    expect(out).toMatchObject({ kind: 'allowed', change: { count: -1, mass: 0 } })
  })

  test('the observed number is never altered, and no number falls below zero', () => {
    const balance = fc.tuple(fc.nat(100_000), fc.nat(1_000_000)).map(([count, mg]) => aBalance(count, mg))
    fc.assert(
      fc.property(balance, anyAmount, anyWeight, (held, amount, weight) => {
        const out = takeOut(held, amount, weight)
        const observed = amount.kind === 'mass' ? amount.mass : amount.count
        const there = amount.kind === 'mass' ? held.mass : held.count
        expect(out.kind).toBe(observed <= there ? 'allowed' : 'not-enough')
        if (out.kind !== 'allowed') return
        expect(amount.kind === 'mass' ? out.change.mass : out.change.count).toBe(0 - observed)
        expect(afterChange(held, out.change)).toEqual(out.left)
        expect(out.change.count <= 0 && out.change.mass <= 0).toBe(true)
        if (observed === there) expect(out.left).toEqual(NOTHING)
        // The derived number runs out when, and only when, the rest of the observed one comes to none of it.
        if (amount.kind === 'mass' && held.count > 0)
          expect(out.left.count === 0).toBe(countFromMass(out.left.mass, weight) === 0)
        if (amount.kind === 'count' && held.mass > 0)
          expect(out.left.mass === 0).toBe(massFromCount(out.left.count, weight) === 0)
      }),
      { numRuns: 2_000 },
    )
  })
})

test('a balance takes a change, and never one below zero', () => {
  expect(afterChange(aBalance(10, 100), { count: 5, mass: -100 })).toEqual(aBalance(15, 0))
  expect(() => afterChange(aBalance(10, 100), { count: -11, mass: 0 })).toThrow(RangeError)
  expect(() => afterChange(aBalance(10, 100), { count: 0, mass: -101 })).toThrow(RangeError)
})

test('a stocktake changes the balance to what was found', () => {
  expect(stocktakeChange(aBalance(100, 24_400), weighed(22_000), BEAN)).toEqual({ count: -10, mass: -2_400 })
  expect(stocktakeChange(aBalance(100, 24_400), counted(104), BEAN)).toEqual({ count: 4, mass: 976 })
  fc.assert(
    fc.property(fc.nat(10_000), fc.nat(1_000_000), anyAmount, anyWeight, (count, mg, found, weight) => {
      const balance = aBalance(count, mg)
      expect(afterChange(balance, stocktakeChange(balance, found, weight))).toEqual(
        bothNumbers(found, weight),
      )
    }),
  )
})

test('a new hundred-seed weight changes the derived number and leaves the known one', () => {
  const heavier = hundredSeedWeightFromGrams(30)
  expect(recountChange(aBalance(100, 24_400), 'weighed', heavier)).toEqual({ count: -19, mass: 0 })
  expect(recountChange(aBalance(100, 24_400), 'counted', heavier)).toEqual({ count: 0, mass: 5_600 })
  fc.assert(
    fc.property(
      fc.nat(10_000),
      fc.nat(1_000_000),
      fc.constantFrom('weighed', 'counted'),
      anyWeight,
      (count, mg, basis, weight) => {
        const before = aBalance(count, mg)
        const after = afterChange(before, recountChange(before, basis, weight))
        if (basis === 'weighed')
          expect(after).toEqual({ count: countFromMass(before.mass, weight), mass: mg })
        else expect(after).toEqual({ count, mass: massFromCount(before.count, weight) })
      },
    ),
  )
})
