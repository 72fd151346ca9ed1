import { type Amount, measuredOf } from '../amounts/amount.ts'
import { type Milligrams, milligrams } from '../amounts/mass.ts'
import { type SeedCount, seedCount } from '../amounts/seed-count.ts'
import type { LotBasis, Measured } from '../shared/closed-sets.ts'
import { countFromMass, type HundredSeedWeight, massFromCount } from '../weights/hundred-seed-weight.ts'

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
 * There is enough when the book holds as much as was asked of the number that was observed: mass when it was weighed,
 * seeds when they were counted. That number is never altered. The derived number is the amount's own, but where
 * rounding has left the book with less of it, what is left is derived instead; and an amount that empties the observed
 * number empties both. So no entry takes seed that is not there, nor leaves seed without mass.
 */
export function takeOut(balance: Balance, amount: Amount, weight: HundredSeedWeight): Outgoing {
  const asked = bothNumbers(amount, weight)
  const enough = amount.kind === 'mass' ? asked.mass <= balance.mass : asked.count <= balance.count
  if (!enough) return { kind: 'not-enough', asked, balance }
  const left =
    amount.kind === 'mass' ? leftByMass(balance, asked, weight) : leftByCount(balance, asked, weight)
  return {
    kind: 'allowed',
    change: { count: left.count - balance.count, mass: left.mass - balance.mass },
    left,
    measured: measuredOf(amount),
  }
}

function leftByMass(balance: Balance, asked: Balance, weight: HundredSeedWeight): Balance {
  const mass = milligrams(balance.mass - asked.mass)
  return { mass, count: seedCount(derivedLeft(balance.count, asked.count, countFromMass(mass, weight))) }
}

function leftByCount(balance: Balance, asked: Balance, weight: HundredSeedWeight): Balance {
  const count = seedCount(balance.count - asked.count)
  return { count, mass: milligrams(derivedLeft(balance.mass, asked.mass, massFromCount(count, weight))) }
}

function derivedLeft(held: number, asked: number, derivedFromRest: number): number {
  if (derivedFromRest === 0) return 0
  return asked < held ? held - asked : Math.min(held, derivedFromRest)
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
