import { alias } from 'drizzle-orm/sqlite-core'
import type { Sqlite } from '../migrations/connection.ts'
import { germinationResult } from '../schema/germination-tables.ts'
import { crop } from '../schema/reference-tables.ts'
import { accession } from '../schema/stock-tables.ts'
import { columns, expression, orNull, type RowOf, select, selectValue } from './columns.ts'
import { notUndone } from './measurements.ts'
import { JOIN_SEED, SEED_NAMES } from './seed-names.ts'

/** Nothing reversed it. */
const STANDS = 'NOT EXISTS (SELECT 1 FROM movement AS back WHERE back.reverses_id = movement.id)'
const OUT = `movement JOIN withdrawal ON withdrawal.id = movement.withdrawal_id
  WHERE movement.kind = 'withdrawal' AND movement.on_date BETWEEN @from AND @to AND ${STANDS}`
const GIFTS = `accession WHERE received_on BETWEEN @from AND @to AND ${notUndone('accession')}`
const RETURNS = `seed_return WHERE on_date BETWEEN @from AND @to AND ${notUndone('seed_return')}`
const TESTS = `germination_result WHERE tested_on BETWEEN @from AND @to AND ${notUndone('germination_result')}
  AND id IN (SELECT max(id) FROM germination_result AS each WHERE ${notUndone('each')} GROUP BY test_id)`

function span(year: number): { readonly from: string; readonly to: string } {
  const text = String(year).padStart(4, '0')
  return { from: `${text}-01-01`, to: `${text}-12-31` }
}

const counted = (sql: string) => expression<number>(`(SELECT ${sql})`)
const YEAR = columns({
  gifts: counted(`count(*) FROM ${GIFTS}`),
  donors: counted(`count(DISTINCT donor_id) FROM ${GIFTS}`),
  newPeople: counted(
    'count(*) FROM person WHERE created_on BETWEEN @from AND @to AND merged_into_id IS NULL',
  ),
  visits: counted(`count(DISTINCT withdrawal.id) FROM ${OUT}`),
  takers: counted(`count(DISTINCT withdrawal.person_id) FROM ${OUT}`),
  lotsOut: counted(`count(DISTINCT movement.lot_id) FROM ${OUT}`),
  seedsOut: counted(`coalesce(-sum(movement.count), 0) FROM ${OUT}`),
  returns: counted(`count(*) FROM ${RETURNS}`),
  returners: counted(`count(DISTINCT person_id) FROM ${RETURNS}`),
  tests: counted(`count(*) FROM ${TESTS}`),
  tested: counted(`coalesce(sum(tested), 0) FROM ${TESTS}`),
  sprouted: counted(`coalesce(sum(sprouted), 0) FROM ${TESTS}`),
})

/** What happened in a calendar year, counted. What was taken back since does not count. */
export type YearCounts = RowOf<typeof YEAR>

/** The counts of a calendar year. */
export function yearCounts(sqlite: Sqlite, year: number): YearCounts {
  return select(sqlite, YEAR, (list) => `SELECT ${list}`).get(span(year)) as YearCounts
}

const NAMED = columns({ number: accession.number, ...SEED_NAMES })

/** A variety with the number of its accession. */
export type NamedAccession = RowOf<typeof NAMED>

const OF_ACCESSION = `FROM accession
  JOIN variety ON variety.id = accession.variety_id JOIN crop ON crop.id = variety.crop_id`

/** Accessions that hold no seed any more and lost the last of it in a year. */
export function emptiedIn(sqlite: Sqlite, year: number): NamedAccession[] {
  return select(
    sqlite,
    NAMED,
    (list) => `SELECT ${list} ${OF_ACCESSION}
     WHERE ${notUndone('accession')} AND NOT EXISTS (SELECT 1 FROM lot WHERE lot.accession_id = accession.id AND holds_seed = 1)
       AND (SELECT max(movement.on_date) FROM movement JOIN lot ON lot.id = movement.lot_id
            WHERE lot.accession_id = accession.id AND movement.count < 0) BETWEEN @from AND @to
     ORDER BY crop.common_name, variety.name_folded, accession.id`,
  ).all(span(year))
}

/** Accessions of which seed came back or was grown again in a year. */
export function regrownIn(sqlite: Sqlite, year: number): NamedAccession[] {
  return select(
    sqlite,
    NAMED,
    (
      list,
    ) => `SELECT DISTINCT ${list} ${OF_ACCESSION} JOIN lot ON lot.accession_id = accession.id JOIN seed_return ON seed_return.lot_id = lot.id
     WHERE seed_return.on_date BETWEEN @from AND @to AND ${notUndone('seed_return')} AND lot.generation > 0
     ORDER BY crop.common_name, variety.name_folded, accession.id`,
  ).all(span(year))
}

const MONTH = columns({
  month: expression<number>('CAST(substr(movement.on_date, 6, 2) AS INTEGER)'),
  visits: expression<number>('count(DISTINCT withdrawal.id)'),
})

/** Hand-outs of each month of a year that had any. */
export function outByMonth(sqlite: Sqlite, year: number) {
  return select(sqlite, MONTH, (list) => `SELECT ${list} FROM ${OUT} GROUP BY month ORDER BY month`).all(
    span(year),
  )
}

const CROP_OUT = columns({ crop: crop.commonName, packets: expression<number>('count(*)') })

/** Packets handed out of each crop in a year, most asked first, ten at most. */
export function outByCrop(sqlite: Sqlite, year: number) {
  return select(
    sqlite,
    CROP_OUT,
    (list) => `SELECT ${list} FROM movement JOIN lot ON lot.id = movement.lot_id ${JOIN_SEED}
     WHERE movement.kind = 'withdrawal' AND movement.on_date BETWEEN @from AND @to AND ${STANDS}
     GROUP BY crop.id ORDER BY packets DESC, crop.common_name LIMIT 10`,
  ).all(span(year))
}

const OF_GIFT = `movement JOIN lot ON lot.id = movement.lot_id
  LEFT JOIN withdrawal ON withdrawal.id = movement.withdrawal_id
  WHERE lot.accession_id = @id AND movement.kind = 'withdrawal' AND ${STANDS}`
const latest = alias(germinationResult, 'latest')
const SINCE = columns({
  takers: counted(`count(DISTINCT withdrawal.person_id) FROM ${OF_GIFT}`),
  packets: counted(`count(*) FROM ${OF_GIFT}`),
  regrown: counted(`count(*) FROM seed_return JOIN lot ON lot.id = seed_return.lot_id
    WHERE lot.accession_id = @id AND ${notUndone('seed_return')}`),
  sprouted: orNull(latest.sprouted),
  tested: orNull(latest.tested),
})

/** What became of a gift so far. */
export type GiftSince = RowOf<typeof SINCE>

/** What became of the gift of an accession so far: who took of it, and its latest test. */
export function giftSince(sqlite: Sqlite, accessionId: number): GiftSince {
  return select(
    sqlite,
    SINCE,
    (list) => `SELECT ${list} FROM (SELECT 1) LEFT JOIN (
       SELECT sprouted, tested FROM germination_result JOIN lot ON lot.id = germination_result.lot_id
       WHERE lot.accession_id = @id AND ${notUndone('germination_result')}
       ORDER BY tested_on DESC, germination_result.id DESC LIMIT 1) AS latest`,
  ).get({ id: accessionId }) as GiftSince
}

/** Accessions with working stock that is not in quarantine, of a gift that stands. */
export function accessionsToGive(sqlite: Sqlite): number[] {
  return selectValue(
    sqlite,
    accession.id,
    (id) => `SELECT DISTINCT ${id} FROM accession JOIN lot ON lot.accession_id = accession.id
     WHERE lot.role = 'working' AND lot.holds_seed = 1 AND lot.quarantine_reason IS NULL AND ${notUndone('accession')}
     ORDER BY accession.id`,
  ).all()
}
