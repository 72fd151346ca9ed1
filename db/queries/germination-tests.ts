import type { CountedUnitName } from '../domain/crops/counted-unit.ts'
import type { Category } from '../domain/germination/germination-test.ts'
import type { Sqlite } from '../migrations/connection.ts'
import { notUndone } from './measurements.ts'
import { prepared } from './prepared.ts'

/** A test with its lot and how it ended. Snake case as in the file. */
export interface TestRow {
  readonly id: number
  readonly lot_id: number
  readonly lot_number: string
  readonly accession_id: number
  readonly variety: string
  readonly crop: string
  readonly crop_id: string
  readonly counted_unit: CountedUnitName
  readonly started_on: string | null
  readonly medium: string
  readonly temperature: string
  readonly first_day: number | null
  readonly final_day: number | null
  readonly movement_id: number | null
  readonly follows_id: number | null
  readonly note: string
  readonly entry_id: number
  readonly sown: number
  readonly replicates: number
  readonly last_count_on: string | null
  readonly normal: number
  readonly result_entry_id: number | null
  readonly tested_on: string | null
  readonly sprouted: number | null
  readonly hard_alive: number | null
  readonly fresh_alive: number | null
  readonly result_note: string | null
  readonly cancelled_on: string | null
  readonly cancel_reason: string | null
  readonly seeds_back: number | null
}

/** SQL for the counts in force: of each day the latest entry that was not taken back. */
export const COUNTS_IN_FORCE = `
  SELECT germination_count.* FROM germination_count WHERE entry_id = (
    SELECT max(same_day.entry_id) FROM germination_count AS same_day
    WHERE same_day.test_id = germination_count.test_id AND same_day.on_date = germination_count.on_date
      AND ${notUndone('same_day')})`

const TEST_COLUMNS = `
  germination_test.id, germination_test.lot_id, lot.number AS lot_number, lot.accession_id, variety.name AS variety,
  crop.common_name AS crop, crop.id AS crop_id, counted_unit, started_on, medium, temperature, first_day, final_day, movement_id,
  follows_id,  germination_test.note, germination_test.entry_id,
  (SELECT sum(sown) FROM germination_replicate WHERE test_id = germination_test.id) AS sown,
  (SELECT count(*) FROM germination_replicate WHERE test_id = germination_test.id) AS replicates,
  (SELECT max(on_date) FROM (${COUNTS_IN_FORCE}) WHERE test_id = germination_test.id) AS last_count_on,
  (SELECT coalesce(sum(normal), 0) FROM (${COUNTS_IN_FORCE}) WHERE test_id = germination_test.id) AS normal,
  result.entry_id AS result_entry_id, result.tested_on, result.sprouted, result.hard_alive, result.fresh_alive,
  result.note AS result_note,
  given_up.on_date AS cancelled_on, given_up.reason AS cancel_reason, given_up.seeds_back`

const TEST_JOINS = `
  germination_test
  LEFT JOIN germination_result AS result
    ON result.test_id = germination_test.id AND result.lot_id = germination_test.lot_id AND ${notUndone('result')}
  LEFT JOIN germination_cancel AS given_up ON given_up.test_id = germination_test.id AND ${notUndone('given_up')}
  CROSS JOIN lot ON lot.id = germination_test.lot_id
  JOIN accession ON accession.id = lot.accession_id
  JOIN variety ON variety.id = accession.variety_id
  JOIN crop ON crop.id = variety.crop_id`

/** A test that was not taken back, or undefined. */
export function testRow(sqlite: Sqlite, testId: number): TestRow | undefined {
  return prepared(
    sqlite,
    `SELECT ${TEST_COLUMNS} FROM ${TEST_JOINS} WHERE germination_test.id = ? AND ${notUndone('germination_test')}`,
  ).get(testId) as TestRow | undefined
}

const STATES = {
  'under-way': { holds: 'result.id IS NULL AND given_up.id IS NULL', order: 'germination_test.id' },
  finished: { holds: 'result.id IS NOT NULL', order: 'result.tested_on DESC, germination_test.id DESC' },
  cancelled: { holds: 'given_up.id IS NOT NULL', order: 'given_up.on_date DESC, germination_test.id DESC' },
} as const

export interface TestFilter {
  readonly state: keyof typeof STATES
  readonly lotId?: number | undefined
}

/** Tests of one state, a page at a time: those under way in the order they were begun, the others latest first. */
export function testRows(
  sqlite: Sqlite,
  filter: TestFilter,
  page: { readonly offset: number; readonly limit: number },
): TestRow[] {
  const { order } = STATES[filter.state]
  const { where, values } = testsThat(filter)
  return prepared(
    sqlite,
    `SELECT ${TEST_COLUMNS} FROM ${TEST_JOINS} WHERE ${where} ORDER BY ${order} LIMIT ? OFFSET ?`,
  ).all(...values, page.limit, page.offset) as TestRow[]
}

/** How many tests there are of a state. */
export function testTotal(sqlite: Sqlite, filter: TestFilter): number {
  const { where, values } = testsThat(filter)
  return Number(
    prepared(sqlite, `SELECT count(*) FROM ${TEST_JOINS} WHERE ${where}`)
      .pluck()
      .get(...values),
  )
}

function testsThat({ state, lotId }: TestFilter): { where: string; values: number[] } {
  const where = `${STATES[state].holds} AND ${notUndone('germination_test')}`
  return lotId === undefined
    ? { where, values: [] }
    : { where: `${where} AND germination_test.lot_id = ?`, values: [lotId] }
}

/** Seeds laid out in each replicate, in order. */
export function sownIn(sqlite: Sqlite, testId: number): number[] {
  return prepared(sqlite, 'SELECT sown FROM germination_replicate WHERE test_id = ? ORDER BY ordinal')
    .pluck()
    .all(testId) as number[]
}

/** A count in force: of one replicate on one day. */
export type CountRow = Readonly<Record<Category, number>> & {
  readonly on_date: string
  readonly entry_id: number
  readonly ordinal: number
}

/** The counts of a test in force, by day and replicate. */
export function countsOf(sqlite: Sqlite, testId: number): CountRow[] {
  return prepared(
    sqlite,
    `SELECT on_date, entry_id, ordinal, normal, abnormal, hard, fresh, dead
     FROM (${COUNTS_IN_FORCE}) WHERE test_id = ? ORDER BY on_date, ordinal`,
  ).all(testId) as CountRow[]
}

/** The test that an entry began or counted, where something by another entry rests on it: what, in a few words. */
export function restingOnEntry(sqlite: Sqlite, entryId: number): string | null {
  const said = prepared(
    sqlite,
    `WITH touched (test_id, how) AS (
       SELECT id, 'begun' FROM germination_test WHERE entry_id = @entry
       UNION SELECT test_id, 'counted' FROM germination_count WHERE entry_id = @entry
       UNION SELECT test_id, 'ended' FROM germination_result WHERE entry_id = @entry)
     SELECT entry.said FROM touched JOIN (
       SELECT test_id, entry_id, 'end' AS what FROM germination_result WHERE ${notUndone('germination_result')}
       UNION ALL SELECT test_id, entry_id, 'end' FROM germination_cancel WHERE ${notUndone('germination_cancel')}
       UNION ALL SELECT test_id, entry_id, 'count' FROM germination_count WHERE ${notUndone('germination_count')}
       UNION ALL SELECT follows_id, entry_id, 'stage' FROM germination_test
         WHERE follows_id IS NOT NULL AND ${notUndone('germination_test')}
     ) AS later ON later.test_id = touched.test_id
     JOIN entry ON entry.id = later.entry_id
     WHERE later.entry_id <> @entry
       AND (touched.how = 'begun' OR later.what = 'stage' OR (touched.how = 'counted' AND later.what = 'end'))
     ORDER BY entry.id DESC LIMIT 1`,
  )
    .pluck()
    .get({ entry: entryId }) as string | undefined
  return said ?? null
}

/** The test that is the next stage of another, stands and was not given up; null: none. */
export function followerOf(sqlite: Sqlite, testId: number): number | null {
  const id = prepared(
    sqlite,
    `SELECT germination_test.id FROM germination_test WHERE follows_id = ? AND ${notUndone('germination_test')}
       AND NOT EXISTS (SELECT 1 FROM germination_cancel
         WHERE test_id = germination_test.id AND ${notUndone('germination_cancel')})`,
  )
    .pluck()
    .get(testId) as number | undefined
  return id ?? null
}

/** A result of a lot that stands, its own or carried over from the lot it was split from. */
export interface ResultRow {
  readonly test_id: number
  readonly tested_on: string
  readonly tested: number
  readonly sprouted: number
  readonly hard_alive: 0 | 1
  readonly fresh_alive: 0 | 1
}

/** Every standing result of a lot, latest first. */
export function resultsOfLot(sqlite: Sqlite, lotId: number): ResultRow[] {
  return prepared(
    sqlite,
    `SELECT test_id, tested_on, tested, sprouted, hard_alive, fresh_alive FROM germination_result
     WHERE lot_id = ? AND ${notUndone('germination_result')} ORDER BY tested_on DESC, id DESC`,
  ).all(lotId) as ResultRow[]
}

/** A lot that holds seed, with what decides when it should be tested next. */
export interface MonitoredRow {
  readonly lot_id: number
  readonly accession_id: number
  readonly crop_id: string
  readonly received_on: string
  readonly frozen: number
  /** Whether the result is that of the lot it was split from, having none of its own. */
  readonly of_parent: number
  readonly tested_on: string | null
  readonly tested: number | null
  readonly sprouted: number | null
  /** When it is forecast to cross its threshold, as likely earlier as later. */
  readonly crosses_on: string | null
}

/**
 * Every lot of some accessions that is the library's own stock, holds seed and may be spent.
 *
 * A lot that was split off and has no result of its own goes by the lot it came from: it is the same seed. Reference
 * samples are not tested away, and duplicates elsewhere are not here to be tested.
 */
export function monitoredLots(sqlite: Sqlite, accessionIds: readonly number[]): MonitoredRow[] {
  return prepared(
    sqlite,
    `WITH RECURSIVE frozen (id) AS (
       SELECT id FROM storage_place WHERE kind = 'freezer'
       UNION SELECT storage_place.id FROM storage_place JOIN frozen ON storage_place.parent_id = frozen.id)
     SELECT lot.id AS lot_id, lot.accession_id, variety.crop_id, coalesce(
       seed_return.on_date,
       CASE WHEN split.lot_id IS NOT NULL THEN
         (WITH RECURSIVE seed (of_id) AS (
            SELECT split.parent_lot_id UNION SELECT parent_lot_id FROM seed JOIN lot_parent ON lot_parent.lot_id = of_id
            WHERE relation = 'split')
          SELECT on_date FROM seed JOIN seed_return ON seed_return.lot_id = of_id LIMIT 1) END,
       accession.received_on) AS received_on,
       lot.place_id IN (SELECT id FROM frozen) AS frozen,
       lot.germination_id IS NULL AS of_parent, tested_on, tested, sprouted, crosses_on
     FROM json_each(?) AS wanted CROSS JOIN lot ON lot.accession_id = wanted.value
     JOIN accession ON accession.id = lot.accession_id
     JOIN variety ON variety.id = accession.variety_id
     LEFT JOIN seed_return ON seed_return.lot_id = lot.id
     LEFT JOIN lot_forecast ON lot_forecast.lot_id = lot.id
     LEFT JOIN lot_parent AS split ON split.lot_id = lot.id AND split.relation = 'split'
     LEFT JOIN lot AS parent ON parent.id = split.parent_lot_id
     LEFT JOIN germination_result
       ON germination_result.id = coalesce(lot.germination_id, parent.germination_id)
     WHERE lot.holds_seed = 1 AND lot.role IN ('working', 'reserve')`,
  ).all(JSON.stringify(accessionIds)) as MonitoredRow[]
}

/** Those of some lots of which a test is under way. */
export function lotsUnderTest(sqlite: Sqlite, lotIds: readonly number[]): Set<number> {
  return new Set(
    prepared(
      sqlite,
      `SELECT germination_test.lot_id FROM germination_test
       WHERE germination_test.lot_id IN (SELECT value FROM json_each(?)) AND ${notUndone('germination_test')}
         AND NOT EXISTS (SELECT 1 FROM germination_result
           WHERE test_id = germination_test.id AND ${notUndone('germination_result')})
         AND NOT EXISTS (SELECT 1 FROM germination_cancel
           WHERE test_id = germination_test.id AND ${notUndone('germination_cancel')})`,
    )
      .pluck()
      .all(JSON.stringify(lotIds)) as number[],
  )
}
