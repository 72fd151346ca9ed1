import type { Change } from '../../domain/ledger/movement.ts'
import type { MeasuredOrCarried, MovementKind } from '../../domain/shared/closed-sets.ts'
import type { HundredSeedWeight } from '../../domain/weights/hundred-seed-weight.ts'
import { insertRow } from '../../queries/rows.ts'
import { movement } from '../../schema/stock-tables.ts'
import type { Writing } from './context.ts'

/** One line of the ledger, as a service writes it. */
export interface NewMovement {
  readonly lotId: number
  readonly kind: MovementKind
  readonly on: string
  readonly change: Change
  readonly measured: MeasuredOrCarried
  /** The weight through which one number was derived; null where both were carried over. */
  readonly weight: HundredSeedWeight | null
  readonly personId?: number | null
  readonly withdrawalId?: number
  readonly reversesId?: number
  readonly note?: string
}

/** Writes a movement; the balance of its lot follows by trigger. */
export function writeMovement(writing: Writing, line: NewMovement): number {
  return insertRow(writing.sqlite, movement, {
    lotId: line.lotId,
    entryId: writing.entryId,
    kind: line.kind,
    onDate: line.on,
    count: line.change.count,
    massMg: line.change.mass,
    measured: line.measured,
    weightUg: line.weight,
    personId: line.personId ?? null,
    withdrawalId: line.withdrawalId ?? null,
    reversesId: line.reversesId ?? null,
    note: line.note ?? '',
  })
}
