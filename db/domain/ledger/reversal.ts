import type { Balance, Change, MovementKind } from './movement.ts'

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
  | { readonly kind: 'refused'; readonly because: string }

/** A kind of movement as the keeper calls it, to follow 'the'. */
const CALLED: Readonly<Record<MovementKind, string>> = {
  intake: 'gift',
  return: 'return',
  withdrawal: 'hand-out',
  test: 'germination test',
  discard: 'discard',
  stocktake: 'stocktake',
  split: 'split',
  join: 'join',
  recount: 'new hundred-seed weight',
  reversal: 'reversal',
}

/**
 * Decides whether a movement can be taken back by its exact opposite.
 *
 * Refused when it is a reversal or already reversed, when a later stocktake or weighing has set the balance anew (it
 * already saw the seed as it was), when a later entry used the weight that it brought, or when seed has since gone out
 * that would not be there.
 */
export function decideReversal(movement: ReversibleMovement): ReversalDecision {
  const { lotNumber, later } = movement
  if (movement.kind === 'reversal') {
    return refused('A reversal is not reversed again. Enter what really happened as a new entry.')
  }
  if (movement.alreadyReversed) return refused(`That entry on ${lotNumber} has been taken back already.`)
  const settled = later.find(({ kind }) => kind === 'stocktake' || kind === 'recount')
  if (settled) {
    return refused(
      `The ${CALLED[settled.kind]} of ${settled.on} set the balance of ${lotNumber} after that entry. Take that back first.`,
    )
  }
  const leaning = movement.bringsWeight ? later[0] : undefined
  if (leaning) {
    return refused(
      `The ${CALLED[leaning.kind]} of ${leaning.on} on ${lotNumber} used that weight. Take that back first.`,
    )
  }
  const count = movement.balanceNow.count - movement.count
  const mass = movement.balanceNow.mass - movement.mass
  if (count < 0 || mass < 0) {
    const taker = later.find((change) => change.count < 0 || change.mass < 0)
    const what = taker ? `the ${CALLED[taker.kind]} of ${taker.on}` : 'a later entry'
    return refused(`${lotNumber} no longer holds that seed: ${what} took from it. Take that back first.`)
  }
  return { kind: 'allowed', change: { count: 0 - movement.count, mass: 0 - movement.mass } }
}

function refused(because: string): ReversalDecision {
  return { kind: 'refused', because }
}
