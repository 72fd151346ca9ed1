import type { Sqlite } from '../migrations/connection.ts'
import { notUndone } from './measurements.ts'
import { prepared } from './prepared.ts'

/** What happened in a calendar year, counted. What was taken back since does not count. */
export interface YearCounts {
  readonly gifts: number
  readonly donors: number
  readonly newPeople: number
  readonly visits: number
  readonly takers: number
  readonly lotsOut: number
  readonly seedsOut: number
  readonly returns: number
  readonly returners: number
  readonly tests: number
  readonly tested: number
  readonly sprouted: number
}

/** A withdrawal that stands: nothing reversed it. */
const OUT = `movement JOIN withdrawal ON withdrawal.id = movement.withdrawal_id
  WHERE movement.kind = 'withdrawal' AND movement.on_date BETWEEN @from AND @to
    AND NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id)`
const GIFTS = `accession WHERE received_on BETWEEN @from AND @to AND ${notUndone('accession')}`
const RETURNS = `seed_return WHERE on_date BETWEEN @from AND @to AND ${notUndone('seed_return')}`
const TESTS = `germination_result WHERE tested_on BETWEEN @from AND @to AND ${notUndone('germination_result')}
  AND id IN (SELECT max(id) FROM germination_result AS each WHERE ${notUndone('each')} GROUP BY test_id)`

function span(year: number): { readonly from: string; readonly to: string } {
  const text = String(year).padStart(4, '0')
  return { from: `${text}-01-01`, to: `${text}-12-31` }
}

export function yearCounts(sqlite: Sqlite, year: number): YearCounts {
  return prepared(
    sqlite,
    `SELECT (SELECT count(*) FROM ${GIFTS}) AS gifts,
       (SELECT count(DISTINCT donor_id) FROM ${GIFTS}) AS donors,
       (SELECT count(*) FROM person WHERE created_on BETWEEN @from AND @to AND joined_into_id IS NULL) AS newPeople,
       (SELECT count(DISTINCT withdrawal.id) FROM ${OUT}) AS visits,
       (SELECT count(DISTINCT withdrawal.person_id) FROM ${OUT}) AS takers,
       (SELECT count(DISTINCT movement.lot_id) FROM ${OUT}) AS lotsOut,
       (SELECT coalesce(-sum(movement.count), 0) FROM ${OUT}) AS seedsOut,
       (SELECT count(*) FROM ${RETURNS}) AS returns,
       (SELECT count(DISTINCT person_id) FROM ${RETURNS}) AS returners,
       (SELECT count(*) FROM ${TESTS}) AS tests,
       (SELECT coalesce(sum(tested), 0) FROM ${TESTS}) AS tested,
       (SELECT coalesce(sum(sprouted), 0) FROM ${TESTS}) AS sprouted`,
  ).get(span(year)) as YearCounts
}

/** A variety with the number of its accession. */
export interface NamedAccession {
  readonly number: string
  readonly variety: string
  readonly crop: string
}

const NAMED = `accession.number, variety.name AS variety, crop.common_name AS crop
  FROM accession JOIN variety ON variety.id = accession.variety_id JOIN crop ON crop.id = variety.crop_id`

/** Accessions that hold no seed any more and lost the last of it in a year. */
export function emptiedIn(sqlite: Sqlite, year: number): NamedAccession[] {
  return prepared(
    sqlite,
    `SELECT ${NAMED}
     WHERE ${notUndone('accession')} AND NOT EXISTS (SELECT 1 FROM lot WHERE lot.accession_id = accession.id AND holds_seed = 1)
       AND (SELECT max(movement.on_date) FROM movement JOIN lot ON lot.id = movement.lot_id
            WHERE lot.accession_id = accession.id AND movement.count < 0) BETWEEN @from AND @to
     ORDER BY crop.common_name, variety.name_folded, accession.id`,
  ).all(span(year)) as NamedAccession[]
}

/** Accessions of which seed came back or was grown again in a year. */
export function regrownIn(sqlite: Sqlite, year: number): NamedAccession[] {
  return prepared(
    sqlite,
    `SELECT DISTINCT ${NAMED} JOIN lot ON lot.accession_id = accession.id JOIN seed_return ON seed_return.lot_id = lot.id
     WHERE seed_return.on_date BETWEEN @from AND @to AND ${notUndone('seed_return')} AND lot.generation > 0
     ORDER BY crop.common_name, variety.name_folded, accession.id`,
  ).all(span(year)) as NamedAccession[]
}

/** Hand-outs of each month of a year that had any, and of each crop, most asked first. */
export function outByMonth(
  sqlite: Sqlite,
  year: number,
): { readonly month: number; readonly visits: number }[] {
  return prepared(
    sqlite,
    `SELECT CAST(substr(movement.on_date, 6, 2) AS INTEGER) AS month, count(DISTINCT withdrawal.id) AS visits
     FROM ${OUT} GROUP BY month ORDER BY month`,
  ).all(span(year)) as { month: number; visits: number }[]
}

export function outByCrop(
  sqlite: Sqlite,
  year: number,
): { readonly crop: string; readonly packets: number }[] {
  return prepared(
    sqlite,
    `SELECT crop.common_name AS crop, count(*) AS packets
     FROM movement JOIN lot ON lot.id = movement.lot_id JOIN accession ON accession.id = lot.accession_id
     JOIN variety ON variety.id = accession.variety_id JOIN crop ON crop.id = variety.crop_id
     WHERE movement.kind = 'withdrawal' AND movement.on_date BETWEEN @from AND @to
       AND NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id)
     GROUP BY crop.id ORDER BY packets DESC, crop LIMIT 10`,
  ).all(span(year)) as { crop: string; packets: number }[]
}

/** What became of a gift so far. */
export interface GiftSince {
  readonly takers: number
  readonly packets: number
  readonly regrown: number
  readonly sprouted: number | null
  readonly tested: number | null
}

export function giftSince(sqlite: Sqlite, accessionId: number): GiftSince {
  return prepared(
    sqlite,
    `SELECT
       (SELECT count(DISTINCT withdrawal.person_id) FROM movement JOIN withdrawal ON withdrawal.id = movement.withdrawal_id
          JOIN lot ON lot.id = movement.lot_id WHERE lot.accession_id = @id AND movement.kind = 'withdrawal'
          AND NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id)) AS takers,
       (SELECT count(*) FROM movement JOIN lot ON lot.id = movement.lot_id
          WHERE lot.accession_id = @id AND movement.kind = 'withdrawal'
          AND NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id)) AS packets,
       (SELECT count(*) FROM seed_return JOIN lot ON lot.id = seed_return.lot_id
          WHERE lot.accession_id = @id AND ${notUndone('seed_return')}) AS regrown,
       latest.sprouted, latest.tested
     FROM (SELECT 1) LEFT JOIN (
       SELECT sprouted, tested FROM germination_result JOIN lot ON lot.id = germination_result.lot_id
       WHERE lot.accession_id = @id AND ${notUndone('germination_result')}
       ORDER BY tested_on DESC, germination_result.id DESC LIMIT 1) AS latest`,
  ).get({ id: accessionId }) as GiftSince
}

/** Accessions with working stock that is not in quarantine, of a gift that stands. */
export function accessionsToGive(sqlite: Sqlite): number[] {
  return prepared(
    sqlite,
    `SELECT DISTINCT accession.id FROM accession JOIN lot ON lot.accession_id = accession.id
     WHERE lot.role = 'working' AND lot.holds_seed = 1 AND lot.quarantine_reason IS NULL AND ${notUndone('accession')}
     ORDER BY accession.id`,
  )
    .pluck()
    .all() as number[]
}
