import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import { AFFECTED, RECALL_OUTCOMES } from '../domain/shared/closed-sets.ts'

/** Seed asked back or stopped, from the lot where something was found. */
export const recall = sqliteTable('recall', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  onDate: text('on_date').notNull(),
  reason: text('reason').notNull(),
  /** What whoever has some is asked to do. */
  advice: text('advice').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** A lot that a recall takes in. */
export const recallLot = sqliteTable('recall_lot', {
  id: integer('id').primaryKey(),
  recallId: integer('recall_id').notNull(),
  lotId: integer('lot_id').notNull(),
  affected: text('affected', { enum: AFFECTED }).notNull(),
  entryId: integer('entry_id').notNull(),
})

/** What came of a recall: for a lot, for somebody who has some, or as a whole. */
export const recallOutcome = sqliteTable('recall_outcome', {
  id: integer('id').primaryKey(),
  recallId: integer('recall_id').notNull(),
  lotId: integer('lot_id'),
  personId: integer('person_id'),
  outcome: text('outcome', { enum: RECALL_OUTCOMES }).notNull(),
  onDate: text('on_date').notNull(),
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
})
