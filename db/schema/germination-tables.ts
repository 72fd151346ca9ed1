import { integer, primaryKey, sqliteTable, text } from 'drizzle-orm/sqlite-core'

/** A germination test of a lot, from the day it was laid out. */
export const germinationTest = sqliteTable('germination_test', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  /** Null where only the outcome is known. */
  startedOn: text('started_on'),
  medium: text('medium').notNull(),
  temperature: text('temperature').notNull(),
  /** Days from the start to the first count; null: none is wanted. */
  firstDay: integer('first_day'),
  /** Days from the start to the final count; null: entered in one go when it was over. */
  finalDay: integer('final_day'),
  /** The movement that took its seeds from the stock; null where they came from elsewhere. */
  movementId: integer('movement_id'),
  /** The test whose next stage it is; null: it stands by itself or is the first. */
  followsId: integer('follows_id'),
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** The seeds laid out together in one dish or roll. */
export const germinationReplicate = sqliteTable(
  'germination_replicate',
  {
    testId: integer('test_id').notNull(),
    ordinal: integer('ordinal').notNull(),
    sown: integer('sown').notNull(),
  },
  (table) => [primaryKey({ columns: [table.testId, table.ordinal] })],
)

/** Seeds taken out of a replicate on a day, by category. Of one day the latest standing entry counts. */
export const germinationCount = sqliteTable(
  'germination_count',
  {
    testId: integer('test_id').notNull(),
    onDate: text('on_date').notNull(),
    entryId: integer('entry_id').notNull(),
    ordinal: integer('ordinal').notNull(),
    normal: integer('normal').notNull(),
    abnormal: integer('abnormal').notNull(),
    hard: integer('hard').notNull(),
    fresh: integer('fresh').notNull(),
    dead: integer('dead').notNull(),
  },
  (table) => [primaryKey({ columns: [table.testId, table.onDate, table.entryId, table.ordinal] })],
)

/** A test given up before its end. */
export const germinationCancel = sqliteTable('germination_cancel', {
  id: integer('id').primaryKey(),
  testId: integer('test_id').notNull(),
  onDate: text('on_date').notNull(),
  reason: text('reason').notNull(),
  /** Whether the seeds had stayed dry and went back into the stock. */
  seedsBack: integer('seeds_back', { mode: 'boolean' }).notNull(),
  entryId: integer('entry_id').notNull(),
})

/** What a finished test says of a lot; a lot split off carries the result of the lot it came from. */
export const germinationResult = sqliteTable('germination_result', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  testId: integer('test_id').notNull(),
  testedOn: text('tested_on').notNull(),
  tested: integer('tested').notNull(),
  /** Seeds counted as alive: normal seedlings, and hard and fresh seed where the two flags say so. */
  sprouted: integer('sprouted').notNull(),
  hardAlive: integer('hard_alive', { mode: 'boolean' }).notNull(),
  freshAlive: integer('fresh_alive', { mode: 'boolean' }).notNull(),
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
})
