import { type Milligrams, milligrams } from '../amounts/mass.ts'
import { seedCount } from '../amounts/seed-count.ts'
import { countFromMass, type HundredSeedWeight, massFromCount } from '../weights/hundred-seed-weight.ts'
import type { Balance, Change, MovementKind } from './movement.ts'

/** A movement as the book keeps it, with how its numbers were come by. */
export interface BookedMovement extends Change {
  readonly kind: MovementKind
  readonly measured: 'mass' | 'count' | 'estimate' | 'carried'
  readonly weight: HundredSeedWeight | null
}

/**
 * Whether the count and the mass of a movement agree through the weight it names.
 *
 * Numbers carried over from another lot or turned round from another movement agree by being equal to theirs, which
 * the entry's own sums show; a stocktake and a recount agree when the balance after them does. An outgoing movement
 * may be smaller in its derived number where the book held no more.
 */
export function numbersAgree(movement: BookedMovement, before: Balance): boolean {
  const { weight } = movement
  if (movement.measured === 'carried' || weight === null) return true
  const after = { count: before.count + movement.count, mass: before.mass + movement.mass }
  if (after.count < 0 || after.mass < 0) return false
  if (movement.kind === 'stocktake' || movement.kind === 'recount') {
    return pairAgrees(after.count, after.mass, movement.measured, weight)
  }
  if (after.count === 0 && after.mass === 0 && movement.count <= 0 && movement.mass <= 0) return true
  const count = Math.abs(movement.count)
  const mass = Math.abs(movement.mass)
  if (pairAgrees(count, mass, movement.measured, weight)) return true
  const derivedIsHeld = movement.measured === 'mass' ? after.count === 0 : after.mass === 0
  return movement.count <= 0 && movement.mass <= 0 && derivedIsHeld
}

function pairAgrees(
  count: number,
  mass: number,
  measured: 'mass' | 'count' | 'estimate',
  weight: HundredSeedWeight,
): boolean {
  return measured === 'mass'
    ? countFromMass(mass as Milligrams, weight) === seedCount(count)
    : massFromCount(seedCount(count), weight) === milligrams(mass)
}
