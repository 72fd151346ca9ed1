import { type Message, message } from '../../messages/message.ts'
import type { MovementKind } from '../shared/closed-sets.ts'
import type { Balance, Change } from './movement.ts'

/** A movement that somebody wants to take back, and what has happened to its lot since. */
export interface ReversibleMovement extends Change {
  readonly lotNumber: string
  readonly kind: MovementKind
  readonly alreadyReversed: boolean
  /** Whether its entry put a hundred-seed weight of the lot in force, through which later entries were derived. */
  readonly bringsWeight: boolean
  readonly balanceNow: Balance
  /** Movements of the same lot written later, neither reversed nor reversals themselves, oldest first. */
  readonly later: readonly (Change & { readonly kind: MovementKind; readonly on: string })[]
}

export type ReversalDecision =
  | { readonly kind: 'allowed'; readonly change: Change }
  | { readonly kind: 'refused'; readonly because: Message }

/** A later movement, as the keeper calls it. */
function called({ kind, on }: { readonly kind: MovementKind; readonly on: string }) {
  return { kind: message(`reversal.kind.${kind}`), on: { day: on } }
}

/**
 * Decides whether a movement can be taken back by its exact opposite.
 *
 * Refused when it is a reversal or already reversed, when a later stocktake or weighing has set the balance anew (it
 * already saw the seed as it was), when a later entry used the weight that it brought, or when seed has since gone out
 * that would not be there.
 */
export function decideReversal(movement: ReversibleMovement): ReversalDecision {
  const { lotNumber: lot, later } = movement
  if (movement.kind === 'reversal') {
    return refused(message('reversal.of-a-reversal'))
  }
  if (movement.alreadyReversed) return refused(message('reversal.undone-already', { lot }))
  const settled = later.find(({ kind }) => kind === 'stocktake' || kind === 'recount')
  if (settled) return refused(message('reversal.set-anew', { lot, ...called(settled) }))
  const leaning = movement.bringsWeight ? later[0] : undefined
  if (leaning) return refused(message('reversal.used-weight', { lot, ...called(leaning) }))
  const count = movement.balanceNow.count - movement.count
  const mass = movement.balanceNow.mass - movement.mass
  if (count < 0 || mass < 0) {
    const taker = later.find((change) => change.count < 0 || change.mass < 0)
    return refused(
      taker
        ? message('reversal.taken-since', { lot, ...called(taker) })
        : message('reversal.taken-later', { lot }),
    )
  }
  return { kind: 'allowed', change: { count: 0 - movement.count, mass: 0 - movement.mass } }
}

function refused(because: Message): ReversalDecision {
  return { kind: 'refused', because }
}
