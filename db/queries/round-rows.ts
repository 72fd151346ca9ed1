import type { Inspection } from '../domain/rounds/inspection.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { notUndone } from './measurements.ts'
import { prepared } from './prepared.ts'

/** The day of the latest round that stands, by place. */
export function lastRounds(sqlite: Sqlite): ReadonlyMap<number, string> {
  const rows = prepared(
    sqlite,
    `SELECT place_id, max(on_date) AS last_on FROM round_check JOIN storage_round ON storage_round.id = round_id
     WHERE ${notUndone('storage_round')} GROUP BY place_id`,
  ).all() as { place_id: number; last_on: string }[]
  return new Map(rows.map(({ place_id, last_on }) => [place_id, last_on]))
}

/** The lots in force that lie in something airtight. */
export function lotsClosedIn(sqlite: Sqlite): ReadonlySet<number> {
  const lots = prepared(
    sqlite,
    `SELECT lot_id FROM lot_container AS latest WHERE airtight = 1 AND id = (
       SELECT id FROM lot_container WHERE lot_id = latest.lot_id AND ${notUndone('lot_container')}
       ORDER BY since DESC, id DESC LIMIT 1)`,
  )
    .pluck()
    .all() as number[]
  return new Set(lots)
}

export interface RoundRow {
  readonly id: number
  readonly entry_id: number
  readonly on_date: string
  readonly walked_by: string
  readonly places: number
}

/** Rounds that stand, latest first; with a place, only those that went there. */
export function roundRows(
  sqlite: Sqlite,
  placeId: number | null,
  limit: number,
  offset: number,
): { rows: RoundRow[]; total: number } {
  const which = `FROM storage_round WHERE ${notUndone('storage_round')} AND (@place IS NULL OR EXISTS (
    SELECT 1 FROM round_check WHERE round_id = storage_round.id AND place_id = @place))`
  const rows = prepared(
    sqlite,
    `SELECT id, entry_id, on_date, walked_by,
       (SELECT count(DISTINCT place_id) FROM round_check WHERE round_id = storage_round.id) AS places
     ${which} ORDER BY on_date DESC, id DESC LIMIT @limit OFFSET @offset`,
  ).all({ place: placeId, limit, offset }) as RoundRow[]
  const total = prepared(sqlite, `SELECT count(*) ${which}`).pluck().get({ place: placeId }) as number
  return { rows, total }
}

export interface FindingRow {
  readonly id: number
  readonly place_id: number
  readonly path: string
  readonly looked_for: Inspection
  readonly note: string
}

/** What a round found. */
export function findingsOfRound(sqlite: Sqlite, roundId: number): FindingRow[] {
  return prepared(
    sqlite,
    `SELECT round_check.id, place_id, path, looked_for, note FROM round_check
       JOIN storage_place ON storage_place.id = place_id
     WHERE round_id = ? AND outcome = 'found' ORDER BY round_check.id`,
  ).all(roundId) as FindingRow[]
}

/** The lots that a finding concerns, by number. */
export function lotsOfFinding(sqlite: Sqlite, checkId: number): { lotId: number; lotNumber: string }[] {
  return prepared(
    sqlite,
    `SELECT lot.id AS lotId, number AS lotNumber FROM round_check_lot JOIN lot ON lot.id = lot_id
     WHERE check_id = ? ORDER BY number`,
  ).all(checkId) as { lotId: number; lotNumber: string }[]
}

/** What rounds found that concerns a lot, latest first. */
export function findingsOfLot(sqlite: Sqlite, lotId: number): (FindingRow & { readonly on_date: string })[] {
  return prepared(
    sqlite,
    `SELECT round_check.id, place_id, path, looked_for, note, on_date FROM round_check_lot
       JOIN round_check ON round_check.id = check_id
       JOIN storage_round ON storage_round.id = round_id
       JOIN storage_place ON storage_place.id = place_id
     WHERE lot_id = ? AND ${notUndone('storage_round')} ORDER BY on_date DESC, round_check.id DESC`,
  ).all(lotId) as (FindingRow & { readonly on_date: string })[]
}
