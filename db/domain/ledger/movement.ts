import { type Amount, type Measured, measuredOf } from '../amounts/amount.ts'
import { type Milligrams, milligrams } from '../amounts/mass.ts'
import { type SeedCount, seedCount } from '../amounts/seed-count.ts'
import { countFromMass, type HundredSeedWeight, massFromCount } from '../weights/hundred-seed-weight.ts'

/** What kind of thing happened to a lot's seed. The ledger is append-only: a mistake gets a 'reversal'. */
export type MovementKind =
  | 'intake'
  | 'return'
  | 'withdrawal'
  | 'test'
  | 'discard'
  | 'stocktake'
  | 'split'
  | 'join'
  | 'recount'
  | 'reversal'

/** Which number of a lot is the known one; the other is derived through the hundred-seed weight. */
export type LotBasis = 'weighed' | 'counted'

/** What a lot holds: both numbers, always exact sums of its movements. */
export interface Balance {
  readonly count: SeedCount
  readonly mass: Milligrams
}

/** The signed change that one movement makes, in seeds and milligrams. */
export interface Change {
  readonly count: number
  readonly mass: number
}

export const NOTHING: Balance = { count: seedCount(0), mass: milligrams(0) }

/** Both numbers of an amount, one observed and the other derived. */
export function bothNumbers(amount: Amount, weight: HundredSeedWeight): Balance {
  return amount.kind === 'mass'
    ? { mass: amount.mass, count: countFromMass(amount.mass, weight) }
    : { count: amount.count, mass: massFromCount(amount.count, weight) }
}

/** How an outgoing amount stands against a balance. */
export type Outgoing =
  | { readonly kind: 'allowed'; readonly change: Change; readonly left: Balance; readonly measured: Measured }
  | { readonly kind: 'not-enough'; readonly asked: Balance; readonly balance: Balance }

/**
 * Decides what taking `amount` out of a lot does to it.
 *
 * The lot's basis decides whether there is enough: mass for a weighed lot, count for a counted one. The derived number
 * is held to what the book still has, and an amount that empties the observed number empties both, so that rounding
 * never leaves a remainder that is not there nor takes seed that is not there.
 */
export function takeOut(
  balance: Balance,
  basis: LotBasis,
  amount: Amount,
  weight: HundredSeedWeight,
): Outgoing {
  const asked = bothNumbers(amount, weight)
  const tooMuch = basis === 'weighed' ? asked.mass > balance.mass : asked.count > balance.count
  const roundsToAll = amount.kind === 'count' && basis === 'weighed' && amount.count === balance.count
  if (tooMuch && !roundsToAll) return { kind: 'not-enough', asked, balance }
  const empties =
    roundsToAll || (basis === 'weighed' ? asked.mass === balance.mass : asked.count === balance.count)
  const count = empties ? balance.count : Math.min(asked.count, balance.count)
  const mass = empties ? balance.mass : Math.min(asked.mass, balance.mass)
  return {
    kind: 'allowed',
    change: { count: -count, mass: -mass },
    left: { count: seedCount(balance.count - count), mass: milligrams(balance.mass - mass) },
    measured: measuredOf(amount),
  }
}

/** The balance after a change. Throws RangeError if either number would fall below zero. */
export function afterChange(balance: Balance, change: Change): Balance {
  return { count: seedCount(balance.count + change.count), mass: milligrams(balance.mass + change.mass) }
}

/** The change that a stocktake makes: what was found, less what the book says. */
export function stocktakeChange(balance: Balance, found: Amount, weight: HundredSeedWeight): Change {
  const both = bothNumbers(found, weight)
  return { count: both.count - balance.count, mass: both.mass - balance.mass }
}

/**
 * The change that a new hundred-seed weight makes to the derived number of a lot; the known number stays.
 *
 * Written as a movement of its own, so that a balance stays the sum of its movements.
 */
export function recountChange(balance: Balance, basis: LotBasis, weight: HundredSeedWeight): Change {
  return basis === 'weighed'
    ? { count: countFromMass(balance.mass, weight) - balance.count, mass: 0 }
    : { count: 0, mass: massFromCount(balance.count, weight) - balance.mass }
}
