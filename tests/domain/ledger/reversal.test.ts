import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type {} from '../../../db/domain/ledger/movement.ts'
import { decideReversal, type ReversibleMovement } from '../../../db/domain/ledger/reversal.ts'
import { MOVEMENT_KINDS, type MovementKind } from '../../../db/domain/shared/closed-sets.ts'
import { aBalance } from '../../builders/domain-values.ts'
import { inEnglish } from '../../builders/in-english.ts'

/** What is answered, as somebody who reads English is told it. */
function told(answer: unknown): unknown {
  return inEnglish<unknown>(answer as never)
}

function aMovement(movement: Partial<ReversibleMovement> = {}): ReversibleMovement {
  return {
    lotNumber: 'QH26-0142-A',
    kind: 'withdrawal',
    count: -25,
    mass: -6_100,
    alreadyReversed: false,
    bringsWeight: false,
    balanceNow: aBalance(75, 18_300),
    later: [],
    ...movement,
  }
}

const later = (kind: MovementKind, on: string, count: number, mass: number) => ({ kind, on, count, mass })

test('a movement is taken back by its exact opposite', () => {
  expect(decideReversal(aMovement())).toEqual({ kind: 'allowed', change: { count: 25, mass: 6_100 } })
})

test('a change of nothing is turned round to zero, not minus zero', () => {
  expect(decideReversal(aMovement({ kind: 'recount', count: 0, mass: 5 }))).toEqual({
    kind: 'allowed',
    change: { count: 0, mass: -5 },
  })
})

describe('refused', () => {
  test.each<[string, Partial<ReversibleMovement>, string]>([
    [
      'a reversal',
      { kind: 'reversal' },
      'An undo cannot be undone. Enter what really happened as a new entry.',
    ],
    [
      'what was reversed already',
      { alreadyReversed: true },
      'That entry on QH26-0142-A has been undone already.',
    ],
    [
      'what a stocktake has seen',
      { later: [later('withdrawal', '2026-03-01', -5, -1_220), later('stocktake', '2026-03-14', 2, 488)] },
      'The stocktake of 14 Mar 2026 set the amount of QH26-0142-A after that entry. Undo the stocktake first.',
    ],
    [
      'what was weighed anew since',
      { later: [later('recount', '2026-03-15', -3, 0)] },
      'The new hundred-seed weight of 15 Mar 2026 set the amount of QH26-0142-A after that entry. Undo the new hundred-seed weight first.',
    ],
    [
      'a weighing whose weight was used since',
      {
        kind: 'recount',
        count: 20,
        mass: 0,
        bringsWeight: true,
        later: [later('withdrawal', '2026-03-16', -5, -1_220)],
      },
      'The hand-out of 16 Mar 2026 on QH26-0142-A used that weight. Undo the hand-out first.',
    ],
    [
      'a pouring together whose pooled weight was used since',
      {
        kind: 'merge',
        count: 20,
        mass: 4_000,
        bringsWeight: true,
        later: [later('withdrawal', '2026-03-16', -5, -1_220)],
      },
      'The hand-out of 16 Mar 2026 on QH26-0142-A used that weight. Undo the hand-out first.',
    ],
    [
      'a gift that was handed out since',
      {
        kind: 'intake',
        count: 100,
        mass: 24_400,
        later: [
          later('return', '2026-04-01', 10, 0),
          later('merge', '2026-04-02', 0, 10),
          later('withdrawal', '2026-05-02', -35, -8_540),
        ],
      },
      'QH26-0142-A no longer holds that seed: the hand-out of 2 May 2026 took from it. Undo the hand-out first.',
    ],
    [
      'a gift whose mass alone would be short',
      { kind: 'intake', count: 75, mass: 18_301, later: [later('test', '2026-05-02', 0, -1)] },
      'QH26-0142-A no longer holds that seed: the germination test of 2 May 2026 took from it. Undo the germination test first.',
    ],
    [
      'a gift that is gone by no later entry of this lot',
      { kind: 'intake', count: 76, mass: 18_300 },
      'QH26-0142-A no longer holds that seed: a later entry took from it. Undo the later entry first.',
    ],
  ])('%s', (_, movement, because) => {
    expect(told(decideReversal(aMovement(movement)))).toEqual({ kind: 'refused', because })
  })
})

test('every kind but a reversal can be taken back at once', () => {
  const kinds = MOVEMENT_KINDS.filter((kind) => kind !== 'reversal')
  fc.assert(
    fc.property(fc.constantFrom(...kinds), fc.integer(), fc.integer(), (kind, count, mass) => {
      const balanceNow = aBalance(Math.max(0, count), Math.max(0, mass))
      expect(decideReversal(aMovement({ kind, count, mass, balanceNow }))).toEqual({
        kind: 'allowed',
        change: { count: 0 - count, mass: 0 - mass },
      })
    }),
  )
})
