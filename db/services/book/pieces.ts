import { refuse } from '../../contract/refusal.ts'
import { isPiece } from '../../domain/crops/pieces.ts'
import { message } from '../../messages/message.ts'
import type { LotRow } from '../../queries/lot-rows.ts'

/** Refuses what is only done with seed: a germination test, or drying. */
export function refusePieces({ countedUnit: unit, lotNumber: lot }: LotRow, field: string): void {
  if (!isPiece(unit)) return
  refuse('no-seed', message('pieces.no-seed', { unit, lot }), {
    field,
    todo: message('pieces.no-seed-todo'),
  })
}
