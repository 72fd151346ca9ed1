import { refuse } from '../../contract/refusal.ts'
import { decideReversal } from '../../domain/ledger/reversal.ts'
import { message } from '../../messages/message.ts'
import { bringsWeight, laterMovements, type MovementRow } from '../../queries/ledger.ts'
import { balanceOf } from './amounts.ts'
import type { Writing } from './context.ts'
import { lotOrRefuse } from './new-lot.ts'
import { writeMovement } from './write-movement.ts'

/** Writes the exact opposite of a movement, or refuses with why it cannot be, naming the field that asked for it. */
export function reverseMovement(
  writing: Writing,
  movement: MovementRow,
  reason: string,
  field: string,
): void {
  const row = lotOrRefuse(writing, movement.lotId, field)
  const decision = decideReversal({
    lotNumber: row.lotNumber,
    kind: movement.kind,
    count: movement.count,
    mass: movement.massMg,
    alreadyReversed: movement.reversed === 1,
    bringsWeight:
      movement.kind === 'recount' ||
      (movement.kind === 'merge' && bringsWeight(writing.sqlite, movement.lotId, movement.entryId)),
    balanceNow: balanceOf(row),
    later: laterMovements(writing.sqlite, movement.lotId, movement.movementId, movement.entryId),
  })
  if (decision.kind === 'refused') {
    refuse('cannot-undo', decision.because, { field, todo: message('reversal.nothing-changed') })
  }
  writeMovement(writing, {
    lotId: movement.lotId,
    kind: 'reversal',
    on: writing.today,
    change: decision.change,
    measured: 'carried',
    weight: null,
    personId: movement.personId,
    reversesId: movement.movementId,
    note: reason,
  })
}
