import type { Amount } from '../amounts/amount.ts'
import { milligrams } from '../amounts/mass.ts'
import { seedCount } from '../amounts/seed-count.ts'
import type { Measured, MeasuredOrCarried, MovementKind } from '../shared/closed-sets.ts'
import type { HundredSeedWeight } from '../weights/hundred-seed-weight.ts'
import { type Balance, bothNumbers, type Change, takeOut } from './movement.ts'

/** A movement as the book keeps it, with how its numbers were come by. */
export interface BookedMovement extends Change {
  readonly kind: MovementKind
  readonly measured: MeasuredOrCarried
  readonly weight: HundredSeedWeight | null
}

/**
 * Whether the count and the mass of a movement agree through the weight it names.
 *
 * Numbers carried over from another lot or turned round from another movement agree by being equal to theirs, which
 * the entry's own sums show; a stocktake and a recount agree when the balance after them does; seed that went out
 * agrees when {@link takeOut} decides the same again.
 */
export function numbersAgree(movement: BookedMovement, before: Balance): boolean {
  const { kind, weight, measured } = movement
  if (measured === 'carried' || weight === null) return true
  const after = { count: before.count + movement.count, mass: before.mass + movement.mass }
  if (after.count < 0 || after.mass < 0) return false
  if (kind === 'stocktake' || kind === 'recount') return pairAgrees(after, measured, weight)
  if (movement.count >= 0 && movement.mass >= 0) return pairAgrees(movement, measured, weight)
  if (movement.count > 0 || movement.mass > 0) return false
  const again = takeOut(
    before,
    observed({ count: 0 - movement.count, mass: 0 - movement.mass }, measured),
    weight,
  )
  return (
    again.kind === 'allowed' && again.change.count === movement.count && again.change.mass === movement.mass
  )
}

function pairAgrees(pair: Change, measured: Measured, weight: HundredSeedWeight): boolean {
  const both = bothNumbers(observed(pair, measured), weight)
  return both.count === pair.count && both.mass === pair.mass
}

/** Whether a count was a guess makes no difference to its numbers. */
function observed(pair: Change, measured: Measured): Amount {
  return measured === 'mass'
    ? { kind: 'mass', mass: milligrams(pair.mass) }
    : { kind: 'count', count: seedCount(pair.count), estimated: false }
}
