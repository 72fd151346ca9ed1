import type { MovementKind } from '../domain/ledger/movement.ts'
import type { ReversibleMovement } from '../domain/ledger/reversal.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { joinCanonicalPerson } from './person-records.ts'
import { prepared } from './prepared.ts'

/** A line of the ledger as it lies in the file, with what is shown beside it. */
export interface MovementRow {
  readonly id: number
  readonly lot_id: number
  readonly entry_id: number
  readonly kind: MovementKind
  readonly on_date: string
  readonly count: number
  readonly mass_mg: number
  readonly measured: 'mass' | 'count' | 'estimate' | 'carried'
  readonly weight_ug: number | null
  readonly person_id: number | null
  readonly person: string | null
  readonly purpose: string | null
  readonly note: string
  /** The cautions that its hand-out passed by, and why; null where there was none. */
  readonly overridden: string | null
  readonly reversed: number
}

const MOVEMENT_COLUMNS = `
  movement.id, movement.lot_id, movement.entry_id, movement.kind, movement.on_date, movement.count, movement.mass_mg,
  movement.measured, movement.weight_ug, movement.person_id, who.name AS person, withdrawal.purpose, movement.note,
  withdrawal.overridden,
  EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id) AS reversed`

const MOVEMENT_JOINS = `
  movement ${joinCanonicalPerson('who', 'movement.person_id')}
  LEFT JOIN withdrawal ON withdrawal.id = movement.withdrawal_id`

/** A lot's ledger, in the order it was written. */
export function ledgerOf(sqlite: Sqlite, lotId: number): MovementRow[] {
  return prepared(
    sqlite,
    `SELECT ${MOVEMENT_COLUMNS} FROM ${MOVEMENT_JOINS} WHERE movement.lot_id = ? ORDER BY movement.id`,
  ).all(lotId) as MovementRow[]
}

/** The movements of one entry, in the order they were written. */
export function movementsOf(sqlite: Sqlite, entryId: number): MovementRow[] {
  return prepared(
    sqlite,
    `SELECT ${MOVEMENT_COLUMNS} FROM ${MOVEMENT_JOINS} WHERE movement.entry_id = ? ORDER BY movement.id`,
  ).all(entryId) as MovementRow[]
}

type LaterMovement = ReversibleMovement['later'][number]

/** What happened to a lot after a movement, by other entries, and stands: oldest first. */
export function laterMovements(
  sqlite: Sqlite,
  lotId: number,
  movementId: number,
  entryId: number,
): LaterMovement[] {
  return prepared(
    sqlite,
    `SELECT kind, on_date AS "on", count, mass_mg AS mass FROM movement
     WHERE lot_id = ? AND id > ? AND entry_id <> ? AND kind <> 'reversal'
       AND NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id)
     ORDER BY id`,
  ).all(lotId, movementId, entryId) as LaterMovement[]
}

/** Whether an entry put a hundred-seed weight of a lot in force. */
export function bringsWeight(sqlite: Sqlite, lotId: number, entryId: number): boolean {
  return (
    prepared(sqlite, 'SELECT 1 FROM seed_weight WHERE lot_id = ? AND entry_id = ?').get(lotId, entryId) !==
    undefined
  )
}

/** The movements of an entry as lists show them. */
export function entryLines(sqlite: Sqlite, entryId: number) {
  return prepared(
    sqlite,
    `SELECT lot_id AS lotId, lot.number AS lotNumber, kind, count, mass_mg AS massMg
     FROM movement JOIN lot ON lot.id = lot_id WHERE movement.entry_id = ? ORDER BY movement.id`,
  ).all(entryId) as { lotId: number; lotNumber: string; kind: MovementKind; count: number; massMg: number }[]
}
