import { describe, expect, test } from 'vitest'
import { type BookedMovement, numbersAgree } from '../../../db/domain/ledger/agreement.ts'
import { NOTHING } from '../../../db/domain/ledger/movement.ts'
import { hundredSeedWeightFromGrams } from '../../../db/domain/weights/hundred-seed-weight.ts'
import { aBalance } from '../../builders/domain-values.ts'

const BEAN = hundredSeedWeightFromGrams(24.4)
const HUNDRED_BEANS = aBalance(100, 24_400)

function booked(movement: Partial<BookedMovement>): BookedMovement {
  return { kind: 'withdrawal', count: -25, mass: -6_100, measured: 'count', weight: BEAN, ...movement }
}

describe('numbers that agree', () => {
  test.each<[string, Partial<BookedMovement>, typeof NOTHING]>([
    ['a gift that was counted', { kind: 'intake', count: 25, mass: 6_100 }, NOTHING],
    ['a gift that was weighed', { kind: 'intake', count: 25, mass: 6_200, measured: 'mass' }, NOTHING],
    [
      'a gift that was guessed at',
      { kind: 'intake', count: 200, mass: 48_800, measured: 'estimate' },
      NOTHING,
    ],
    ['a hand-out that was counted', {}, HUNDRED_BEANS],
    ['a hand-out that was weighed', { mass: -6_200, measured: 'mass' }, HUNDRED_BEANS],
    ['a hand-out that empties the lot', { count: -100, mass: -24_350 }, aBalance(100, 24_350)],
    [
      'a stocktake that leaves what was found',
      { kind: 'stocktake', count: -10, mass: -2_400, measured: 'mass' },
      HUNDRED_BEANS,
    ],
    [
      'a stocktake that finds nothing',
      { kind: 'stocktake', count: -100, mass: -24_400, measured: 'mass' },
      HUNDRED_BEANS,
    ],
    [
      'a recount of a weighed lot',
      { kind: 'recount', count: 20, mass: 0, measured: 'mass' },
      aBalance(80, 24_400),
    ],
    ['numbers carried over', { kind: 'split', count: 7, mass: 3, measured: 'carried' }, NOTHING],
    ['a movement without a weight', { count: -1, mass: -999, weight: null }, HUNDRED_BEANS],
  ])('%s', (_, movement, before) => {
    expect(numbersAgree(booked(movement), before)).toBe(true)
  })
})

describe('numbers that do not agree', () => {
  test.each<[string, Partial<BookedMovement>, typeof NOTHING]>([
    ['a gift whose mass is off', { kind: 'intake', count: 25, mass: 6_101 }, NOTHING],
    ['a gift whose count is off', { kind: 'intake', count: 26, mass: 6_100, measured: 'mass' }, NOTHING],
    ['a hand-out whose mass is off', { mass: -6_099 }, HUNDRED_BEANS],
    ['a hand-out that leaves a remainder of mass', { count: -100, mass: -24_300 }, HUNDRED_BEANS],
    ['a hand-out beyond the book', { count: -101, mass: -24_644 }, HUNDRED_BEANS],
    ['seeds out and mass in, weighed', { count: -25, mass: 1, measured: 'mass' }, HUNDRED_BEANS],
    ['mass out and seeds in, counted', { count: 1, mass: -6_100 }, HUNDRED_BEANS],
    ['a stocktake below nothing', { kind: 'stocktake', count: -101, mass: -24_400 }, HUNDRED_BEANS],
    [
      'a stocktake below nothing in mass',
      { kind: 'stocktake', count: -100, mass: -24_401, measured: 'mass' },
      HUNDRED_BEANS,
    ],
    ['seeds out and mass in', { count: -25, mass: 6_100 }, HUNDRED_BEANS],
    ['seeds in and mass out', { count: 25, mass: -6_100, measured: 'mass' }, HUNDRED_BEANS],
    [
      'a stocktake that leaves a pair that is off',
      { kind: 'stocktake', count: -10, mass: -2_000 },
      HUNDRED_BEANS,
    ],
    [
      'a recount that is off by one',
      { kind: 'recount', count: 19, mass: 0, measured: 'mass' },
      aBalance(80, 24_400),
    ],
  ])('%s', (_, movement, before) => {
    expect(numbersAgree(booked(movement), before)).toBe(false)
  })
})
