import { refuse } from '../../contract/refusal.ts'
import { decideReversal } from '../../domain/ledger/reversal.ts'
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
  const row = lotOrRefuse(writing, movement.lot_id, field)
  const decision = decideReversal({
    lotNumber: row.lot_number,
    kind: movement.kind,
    count: movement.count,
    mass: movement.mass_mg,
    alreadyReversed: movement.reversed === 1,
    bringsWeight:
      movement.kind === 'recount' ||
      (movement.kind === 'join' && bringsWeight(writing.sqlite, movement.lot_id, movement.entry_id)),
    balanceNow: balanceOf(row),
    later: laterMovements(writing.sqlite, movement.lot_id, movement.id, movement.entry_id),
  })
  if (decision.kind === 'refused') {
    refuse('cannot-undo', decision.because, { field, todo: 'Nothing was changed.' })
  }
  writeMovement(writing, {
    lotId: movement.lot_id,
    kind: 'reversal',
    on: writing.today,
    change: decision.change,
    measured: 'carried',
    weight: null,
    personId: movement.person_id,
    reversesId: movement.id,
    note: reason,
  })
}
