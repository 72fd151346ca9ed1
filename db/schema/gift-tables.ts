import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import { WAITING_STEPS } from '../domain/shared/closed-sets.ts'

/** A gift that was offered and not taken in at once. */
export const gift = sqliteTable('gift', {
  id: integer('id').primaryKey(),
  donorId: integer('donor_id'),
  offeredOn: text('offered_on').notNull(),
  /** How it is named in a list; its variety may not be in the book yet. */
  variety: text('variety').notNull(),
  crop: text('crop').notNull(),
  /** All that was typed of it, as JSON in the shape that taking it in wants. */
  facts: text('facts').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** What happened to an offered gift. Its state is what its standing events come to. */
export const giftEvent = sqliteTable('gift_event', {
  id: integer('id').primaryKey(),
  giftId: integer('gift_id').notNull(),
  kind: text('kind', { enum: ['waits-for', 'step-done', 'declined', 'accepted'] }).notNull(),
  step: text('step', { enum: WAITING_STEPS }),
  onDate: text('on_date').notNull(),
  due: text('due'),
  note: text('note').notNull(),
  lotId: integer('lot_id'),
  entryId: integer('entry_id').notNull(),
})
