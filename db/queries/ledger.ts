import { alias } from 'drizzle-orm/sqlite-core'
import type { ReversibleMovement } from '../domain/ledger/reversal.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { person } from '../schema/reference-tables.ts'
import { lot, movement, withdrawal } from '../schema/stock-tables.ts'
import { type Columns, columns, expression, isAny, orNull, pick, type RowOf, select } from './columns.ts'
import { joinCanonicalPerson } from './person-records.ts'

const who = alias(person, 'who')

const MOVEMENT = columns({
  movementId: movement.id,
  ...pick(
    movement,
    'lotId',
    'entryId',
    'kind',
    'count',
    'massMg',
    'measured',
    'weightUg',
    'personId',
    'note',
  ),
  on: movement.onDate,
  person: orNull(who.name),
  purpose: orNull(withdrawal.purpose),
  /** The cautions that its hand-out passed by, and why; null where there was none. */
  overridden: orNull(withdrawal.overridden),
  reversed: expression<0 | 1>('EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id)'),
})

/** A line of the ledger as it lies in the file, with what is shown beside it. */
export type MovementRow = RowOf<typeof MOVEMENT>

/** Movements of a lot or of an entry, in the order they were written. */
function movementsBy(sqlite: Sqlite, of: 'lot' | 'entry', id: number): MovementRow[] {
  return select(
    sqlite,
    MOVEMENT,
    (list) => `SELECT ${list} FROM movement ${joinCanonicalPerson('who', 'movement.person_id')}
     LEFT JOIN withdrawal ON withdrawal.id = movement.withdrawal_id
     WHERE movement.${of}_id = ? ORDER BY movement.id`,
  ).all(id)
}

/** A lot's ledger, in the order it was written. */
export const ledgerOf = (sqlite: Sqlite, lotId: number) => movementsBy(sqlite, 'lot', lotId)

/** The movements of one entry, in the order they were written. */
export const movementsOf = (sqlite: Sqlite, entryId: number) => movementsBy(sqlite, 'entry', entryId)

type LaterMovement = ReversibleMovement['later'][number]
const LATER: Columns<LaterMovement> = columns({
  ...pick(movement, 'kind', 'count'),
  on: movement.onDate,
  mass: movement.massMg,
})

/** What happened to a lot after a movement, by other entries, and stands: oldest first. */
export function laterMovements(
  sqlite: Sqlite,
  lotId: number,
  movementId: number,
  entryId: number,
): LaterMovement[] {
  return select(
    sqlite,
    LATER,
    (list) => `SELECT ${list} FROM movement
     WHERE lot_id = ? AND id > ? AND entry_id <> ? AND kind <> 'reversal'
       AND NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id)
     ORDER BY id`,
  ).all(lotId, movementId, entryId)
}

/** Whether an entry put a hundred-seed weight of a lot in force. */
export function bringsWeight(sqlite: Sqlite, lotId: number, entryId: number): boolean {
  return isAny(sqlite, 'FROM seed_weight WHERE lot_id = ? AND entry_id = ?', lotId, entryId)
}

const LINE = columns({ ...pick(movement, 'lotId', 'kind', 'count', 'massMg'), lotNumber: lot.number })

/** The movements of an entry as lists show them. */
export function entryLines(sqlite: Sqlite, entryId: number) {
  return select(
    sqlite,
    LINE,
    (list) => `SELECT ${list}
     FROM movement JOIN lot ON lot.id = lot_id WHERE movement.entry_id = ? ORDER BY movement.id`,
  ).all(entryId)
}
