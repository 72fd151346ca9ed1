import { alias } from 'drizzle-orm/sqlite-core'
import type { Sqlite } from '../migrations/connection.ts'
import { entry } from '../schema/collection-tables.ts'
import { lotForecast } from '../schema/forecast-tables.ts'
import {
  germinationCancel,
  germinationCount,
  germinationReplicate,
  germinationResult,
  germinationTest,
} from '../schema/germination-tables.ts'
import { crop, variety } from '../schema/reference-tables.ts'
import { lot } from '../schema/stock-tables.ts'
import { columns, countOf, expression, orNull, pick, type RowOf, select, selectValue } from './columns.ts'
import { JOIN_KEEPING } from './lot-rows.ts'
import { notUndone } from './measurements.ts'
import { JOIN_SEED, SEED_NAMES } from './seed-names.ts'

/** SQL for the counts in force: of each day the latest entry that was not taken back. */
export const COUNTS_IN_FORCE = `
  SELECT germination_count.* FROM germination_count WHERE entry_id = (
    SELECT max(same_day.entry_id) FROM germination_count AS same_day
    WHERE same_day.test_id = germination_count.test_id AND same_day.on_date = germination_count.on_date
      AND ${notUndone('same_day')})`

const result = alias(germinationResult, 'result')
const givenUp = alias(germinationCancel, 'given_up')

const OF_TEST = 'WHERE test_id = germination_test.id'

const TEST = columns({
  testId: germinationTest.id,
  ...pick(
    germinationTest,
    'lotId',
    'startedOn',
    'medium',
    'temperature',
    'firstDay',
    'finalDay',
    'movementId',
  ),
  ...pick(germinationTest, 'followsId', 'note', 'entryId'),
  lotNumber: lot.number,
  accessionId: lot.accessionId,
  ...SEED_NAMES,
  cropId: crop.id,
  countedUnit: crop.countedUnit,
  sown: expression<number>(`(SELECT sum(sown) FROM germination_replicate ${OF_TEST})`),
  replicates: expression<number>(`(SELECT count(*) FROM germination_replicate ${OF_TEST})`),
  lastCountOn: expression<string | null>(`(SELECT max(on_date) FROM (${COUNTS_IN_FORCE}) ${OF_TEST})`),
  normal: expression<number>(`(SELECT coalesce(sum(normal), 0) FROM (${COUNTS_IN_FORCE}) ${OF_TEST})`),
  resultEntryId: orNull(result.entryId),
  testedOn: orNull(result.testedOn),
  sprouted: orNull(result.sprouted),
  hardAlive: orNull(result.hardAlive),
  freshAlive: orNull(result.freshAlive),
  resultNote: orNull(result.note),
  cancelledOn: orNull(givenUp.onDate),
  cancelReason: orNull(givenUp.reason),
  seedsBack: orNull(givenUp.seedsBack),
})

/** A test with its lot and how it ended. */
export type TestRow = RowOf<typeof TEST>

const TEST_JOINS = `
  germination_test
  LEFT JOIN germination_result AS result
    ON result.test_id = germination_test.id AND result.lot_id = germination_test.lot_id AND ${notUndone('result')}
  LEFT JOIN germination_cancel AS given_up ON given_up.test_id = germination_test.id AND ${notUndone('given_up')}
  CROSS JOIN lot ON lot.id = germination_test.lot_id ${JOIN_SEED}`

/** A test that was not taken back, or undefined. */
export function testRow(sqlite: Sqlite, testId: number): TestRow | undefined {
  return select(
    sqlite,
    TEST,
    (list) =>
      `SELECT ${list} FROM ${TEST_JOINS} WHERE germination_test.id = ? AND ${notUndone('germination_test')}`,
  ).get(testId)
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
  return select(
    sqlite,
    TEST,
    (list) => `SELECT ${list} FROM ${TEST_JOINS} WHERE ${where} ORDER BY ${order} LIMIT ? OFFSET ?`,
  ).all(...values, page.limit, page.offset)
}

/** How many tests there are of a state. */
export function testTotal(sqlite: Sqlite, filter: TestFilter): number {
  const { where, values } = testsThat(filter)
  return countOf(sqlite, `FROM ${TEST_JOINS} WHERE ${where}`, ...values)
}

function testsThat({ state, lotId }: TestFilter): { where: string; values: number[] } {
  const where = `${STATES[state].holds} AND ${notUndone('germination_test')}`
  return lotId === undefined
    ? { where, values: [] }
    : { where: `${where} AND germination_test.lot_id = ?`, values: [lotId] }
}

/** Seeds laid out in each replicate, in order. */
export function sownIn(sqlite: Sqlite, testId: number): number[] {
  return selectValue(
    sqlite,
    germinationReplicate.sown,
    (sown) => `SELECT ${sown} FROM germination_replicate WHERE test_id = ? ORDER BY ordinal`,
  ).all(testId)
}

const COUNT = columns({
  on: germinationCount.onDate,
  ...pick(germinationCount, 'entryId', 'ordinal', 'normal', 'abnormal', 'hard', 'fresh', 'dead'),
})

/** A count in force: of one replicate on one day. */
export type CountRow = RowOf<typeof COUNT>

/** The counts of a test in force, by day and replicate. */
export function countsOf(sqlite: Sqlite, testId: number): CountRow[] {
  return select(
    sqlite,
    COUNT,
    (list) =>
      `SELECT ${list} FROM (${COUNTS_IN_FORCE}) AS germination_count WHERE test_id = ? ORDER BY on_date, ordinal`,
  ).all(testId)
}

/** The test that an entry began or counted, where something by another entry rests on it: what, in a few words. */
export function restingOnEntry(sqlite: Sqlite, entryId: number): string | null {
  const said = selectValue(
    sqlite,
    entry.said,
    (value) => `WITH touched (test_id, how) AS (
       SELECT id, 'begun' FROM germination_test WHERE entry_id = @entry
       UNION SELECT test_id, 'counted' FROM germination_count WHERE entry_id = @entry
       UNION SELECT test_id, 'ended' FROM germination_result WHERE entry_id = @entry)
     SELECT ${value} FROM touched JOIN (
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
  ).get({ entry: entryId })
  return said ?? null
}

/** The test that is the next stage of another, stands and was not given up; null: none. */
export function followerOf(sqlite: Sqlite, testId: number): number | null {
  const follower = selectValue(
    sqlite,
    germinationTest.id,
    (id) => `SELECT ${id} FROM germination_test WHERE follows_id = ? AND ${notUndone('germination_test')}
       AND NOT EXISTS (SELECT 1 FROM germination_cancel
         WHERE test_id = germination_test.id AND ${notUndone('germination_cancel')})`,
  ).get(testId)
  return follower ?? null
}

const RESULT = columns(
  pick(germinationResult, 'testId', 'testedOn', 'tested', 'sprouted', 'hardAlive', 'freshAlive'),
)

/** A result of a lot that stands, its own or carried over from the lot it was split from. */
export type ResultRow = RowOf<typeof RESULT>

/** Every standing result of a lot, latest first. */
export function resultsOfLot(sqlite: Sqlite, lotId: number): ResultRow[] {
  return select(
    sqlite,
    RESULT,
    (list) => `SELECT ${list} FROM germination_result
     WHERE lot_id = ? AND ${notUndone('germination_result')} ORDER BY tested_on DESC, id DESC`,
  ).all(lotId)
}

const MONITORED = columns({
  lotId: lot.id,
  accessionId: lot.accessionId,
  cropId: variety.cropId,
  receivedOn: expression<string>(`coalesce(
    seed_return.on_date,
    CASE WHEN split.lot_id IS NOT NULL THEN
      (WITH RECURSIVE seed (of_id) AS (
         SELECT split.parent_lot_id UNION SELECT parent_lot_id FROM seed JOIN lot_parent ON lot_parent.lot_id = of_id
         WHERE relation = 'split')
       SELECT on_date FROM seed JOIN seed_return ON seed_return.lot_id = of_id LIMIT 1) END,
    accession.received_on)`),
  frozen: expression<0 | 1 | null>('lot.place_id IN (SELECT id FROM frozen)'),
  /** Whether the result is that of the lot it was split from, having none of its own. */
  ofParent: expression<0 | 1>('lot.germination_id IS NULL'),
  testedOn: orNull(germinationResult.testedOn),
  tested: orNull(germinationResult.tested),
  sprouted: orNull(germinationResult.sprouted),
  /** When it is forecast to cross its threshold, as likely earlier as later. */
  crossesOn: orNull(lotForecast.crossesOn),
  ownThreshold: expression<number | null>(
    'coalesce(accession.own_threshold, (SELECT own_threshold FROM crop WHERE crop.id = variety.crop_id))',
  ),
})

/** A lot that holds seed, with what decides when it should be tested next. */
export type MonitoredRow = RowOf<typeof MONITORED>

/**
 * Every lot of some accessions that is the library's own stock, holds seed and may be spent.
 *
 * A lot that was split off and has no result of its own goes by the lot it came from: it is the same seed. Reference
 * samples are not tested away, duplicates elsewhere are not here to be tested, and what is closed or
 * planted in pieces is not tested.
 */
export function monitoredLots(sqlite: Sqlite, accessionIds: readonly number[]): MonitoredRow[] {
  return select(
    sqlite,
    MONITORED,
    (list) => `WITH RECURSIVE frozen (id) AS (
       SELECT id FROM storage_place WHERE kind = 'freezer'
       UNION SELECT storage_place.id FROM storage_place JOIN frozen ON storage_place.parent_id = frozen.id)
     SELECT ${list}
     FROM json_each(?) AS wanted CROSS JOIN lot ON lot.accession_id = wanted.value
     JOIN accession ON accession.id = lot.accession_id
     JOIN variety ON variety.id = accession.variety_id
     LEFT JOIN seed_return ON seed_return.lot_id = lot.id
     LEFT JOIN lot_forecast ON lot_forecast.lot_id = lot.id
     LEFT JOIN lot_parent AS split ON split.lot_id = lot.id AND split.relation = 'split'
     LEFT JOIN lot AS parent ON parent.id = split.parent_lot_id
     LEFT JOIN germination_result
       ON germination_result.id = coalesce(lot.germination_id, parent.germination_id)
     ${JOIN_KEEPING}
     WHERE lot.holds_seed = 1 AND lot.role IN ('working', 'reserve') AND coalesce(policy, 'keep') <> 'closed'
       AND (SELECT counted_unit FROM crop WHERE crop.id = variety.crop_id) NOT IN ('clove', 'bulb', 'tuber')`,
  ).all(JSON.stringify(accessionIds))
}

/** Those of some lots of which a test is under way. */
export function lotsUnderTest(sqlite: Sqlite, lotIds: readonly number[]): Set<number> {
  return new Set(
    selectValue(
      sqlite,
      germinationTest.lotId,
      (lotId) => `SELECT ${lotId} FROM germination_test
       WHERE germination_test.lot_id IN (SELECT value FROM json_each(?)) AND ${notUndone('germination_test')}
         AND NOT EXISTS (SELECT 1 FROM germination_result
           WHERE test_id = germination_test.id AND ${notUndone('germination_result')})
         AND NOT EXISTS (SELECT 1 FROM germination_cancel
           WHERE test_id = germination_test.id AND ${notUndone('germination_cancel')})`,
    ).all(JSON.stringify(lotIds)),
  )
}
