import { alias } from 'drizzle-orm/sqlite-core'
import type { Sqlite } from '../migrations/connection.ts'
import { lotContainer, roundCheck, storageRound } from '../schema/climate-tables.ts'
import { storagePlace } from '../schema/reference-tables.ts'
import { lot } from '../schema/stock-tables.ts'
import { both, columns, countOf, expression, pick, select, selectValue } from './columns.ts'
import { notUndone } from './measurements.ts'

const LAST = columns({ placeId: roundCheck.placeId, on: expression<string>('max(on_date)') })

/** The day of the latest round that stands, by place. */
export function lastRounds(sqlite: Sqlite): ReadonlyMap<number, string> {
  const rows = select(
    sqlite,
    LAST,
    (list) => `SELECT ${list} FROM round_check JOIN storage_round ON storage_round.id = round_id
     WHERE ${notUndone('storage_round')} GROUP BY place_id`,
  ).all()
  return new Map(rows.map(({ placeId, on }) => [placeId, on]))
}

/** The lots in force that lie in something airtight. */
export function lotsClosedIn(sqlite: Sqlite): ReadonlySet<number> {
  const lots = selectValue(
    sqlite,
    alias(lotContainer, 'latest').lotId,
    (lotId) => `SELECT ${lotId} FROM lot_container AS latest WHERE airtight = 1 AND id = (
       SELECT id FROM lot_container WHERE lot_id = latest.lot_id AND ${notUndone('lot_container')}
       ORDER BY since DESC, id DESC LIMIT 1)`,
  )
  return new Set(lots.all())
}

const ROUND = columns({
  roundId: storageRound.id,
  ...pick(storageRound, 'entryId', 'walkedBy'),
  on: storageRound.onDate,
  places: expression<number>(
    '(SELECT count(DISTINCT place_id) FROM round_check WHERE round_id = storage_round.id)',
  ),
})

/** Rounds that stand, latest first; with a place, only those that went there. */
export function roundRows(sqlite: Sqlite, place: number | null, limit: number, offset: number) {
  const which = `FROM storage_round WHERE ${notUndone('storage_round')} AND (@place IS NULL OR EXISTS (
    SELECT 1 FROM round_check WHERE round_id = storage_round.id AND place_id = @place))`
  const rows = select(
    sqlite,
    ROUND,
    (list) => `SELECT ${list} ${which} ORDER BY on_date DESC, id DESC LIMIT @limit OFFSET @offset`,
  ).all({ place, limit, offset })
  return { rows, total: countOf(sqlite, which, { place }) }
}

const FINDING = columns({
  checkId: roundCheck.id,
  ...pick(roundCheck, 'placeId', 'note'),
  path: storagePlace.path,
  look: roundCheck.lookedFor,
})

/** What a round found. */
export function findingsOfRound(sqlite: Sqlite, roundId: number) {
  return select(
    sqlite,
    FINDING,
    (list) => `SELECT ${list} FROM round_check JOIN storage_place ON storage_place.id = place_id
     WHERE round_id = ? AND outcome = 'found' ORDER BY round_check.id`,
  ).all(roundId)
}

const LOT = columns({ lotId: lot.id, lotNumber: lot.number })

/** The lots that a finding concerns, by number. */
export function lotsOfFinding(sqlite: Sqlite, checkId: number) {
  return select(
    sqlite,
    LOT,
    (list) => `SELECT ${list} FROM round_check_lot JOIN lot ON lot.id = lot_id
     WHERE check_id = ? ORDER BY number`,
  ).all(checkId)
}

const DATED_FINDING = both(FINDING, columns({ on: storageRound.onDate }))

/** What rounds found that concerns a lot, latest first. */
export function findingsOfLot(sqlite: Sqlite, lotId: number) {
  return select(
    sqlite,
    DATED_FINDING,
    (list) => `SELECT ${list} FROM round_check_lot
       JOIN round_check ON round_check.id = check_id
       JOIN storage_round ON storage_round.id = round_id
       JOIN storage_place ON storage_place.id = place_id
     WHERE lot_id = ? AND ${notUndone('storage_round')} ORDER BY on_date DESC, round_check.id DESC`,
  ).all(lotId)
}
