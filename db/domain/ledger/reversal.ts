import { assertNever } from '../shared/assert-never.ts'
import type { Balance, Change, MovementKind } from './movement.ts'

/** A movement that somebody wants to take back, and what has happened to its lot since. */
export interface ReversibleMovement extends Change {
  readonly lotNumber: string
  readonly kind: MovementKind
  readonly alreadyReversed: boolean
  readonly balanceNow: Balance
  /** Movements of the same lot written later and not reversed themselves, oldest first. */
  readonly later: readonly { readonly kind: MovementKind; readonly on: string }[]
}

export type ReversalDecision =
  | { readonly kind: 'allowed'; readonly change: Change }
  | { readonly kind: 'refused'; readonly because: string }

/**
 * Decides whether a movement can be taken back by its exact opposite.
 *
 * Refused when it is a reversal or already reversed, when a later stocktake or weighing has set the balance anew (it
 * already saw the seed as it was), or when seed has since gone out that would not be there.
 */
export function decideReversal(movement: ReversibleMovement): ReversalDecision {
  const { lotNumber } = movement
  if (movement.kind === 'reversal') {
    return refused('A reversal is not reversed again. Enter what really happened as a new entry.')
  }
  if (movement.alreadyReversed) return refused(`That entry on ${lotNumber} has been taken back already.`)
  const settled = movement.later.find((later) => later.kind === 'stocktake' || later.kind === 'recount')
  if (settled) {
    const what = settled.kind === 'stocktake' ? 'A stocktake' : 'A new hundred-seed weight'
    return refused(
      `${what} of ${settled.on} set the balance of ${lotNumber} after that entry. Take that back first.`,
    )
  }
  const count = movement.balanceNow.count - movement.count
  const mass = movement.balanceNow.mass - movement.mass
  if (count < 0 || mass < 0) {
    const first = movement.later.find(takesSeed)
    const what = first ? `${wordFor(first.kind)} of ${first.on}` : 'a later entry'
    return refused(`${lotNumber} no longer holds that seed: ${what} took from it. Take that back first.`)
  }
  return { kind: 'allowed', change: { count: 0 - movement.count, mass: 0 - movement.mass } }
}

function takesSeed(later: { readonly kind: MovementKind }): boolean {
  return later.kind !== 'intake' && later.kind !== 'return'
}

function wordFor(kind: MovementKind): string {
  switch (kind) {
    case 'intake':
      return 'the gift'
    case 'return':
      return 'the return'
    case 'withdrawal':
      return 'the hand-out'
    case 'test':
      return 'the germination test'
    case 'discard':
      return 'the discard'
    case 'stocktake':
      return 'the stocktake'
    case 'split':
      return 'the split'
    case 'join':
      return 'the join'
    case 'recount':
      return 'the new hundred-seed weight'
    case 'reversal':
      return 'the reversal'
    default:
      return assertNever(kind, 'A kind of movement has no wording yet')
  }
}

function refused(because: string): ReversalDecision {
  return { kind: 'refused', because }
}
