import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import { PRINT_KINDS } from '../domain/shared/closed-sets.ts'

/** One printing that the keeper confirmed. Taken back by its entry, its items wait again. */
export const printBatch = sqliteTable('print_batch', {
  id: integer('id').primaryKey(),
  kind: text('kind', { enum: PRINT_KINDS }).notNull(),
  sheet: text('sheet'),
  startAt: integer('start_at'),
  rightMm: real('right_mm'),
  downMm: real('down_mm'),
  /** What the keeper calls the printer whose offset it is; empty: not said. */
  printer: text('printer').notNull(),
  printedAt: text('printed_at').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** A label sheet of the library's own. Retired, it is offered no more; what was printed on it still names it. */
export const labelSheet = sqliteTable('label_sheet', {
  id: integer('id').primaryKey(),
  name: text('name').notNull(),
  pageWidthMm: real('page_width_mm').notNull(),
  pageHeightMm: real('page_height_mm').notNull(),
  columns: integer('columns').notNull(),
  rows: integer('rows').notNull(),
  widthMm: real('width_mm').notNull(),
  heightMm: real('height_mm').notNull(),
  leftMm: real('left_mm').notNull(),
  topMm: real('top_mm').notNull(),
  pitchXMm: real('pitch_x_mm').notNull(),
  pitchYMm: real('pitch_y_mm').notNull(),
  retired: integer('retired', { mode: 'boolean' }).notNull(),
  entryId: integer('entry_id').notNull(),
})

/**
 * Something to be printed. It waits while its entry stands, it was not taken out, and no standing batch printed it.
 * Names and contact data are looked up when it is printed and never kept here.
 */
export const printItem = sqliteTable('print_item', {
  id: integer('id').primaryKey(),
  kind: text('kind', { enum: PRINT_KINDS }).notNull(),
  lotId: integer('lot_id'),
  accessionId: integer('accession_id'),
  withdrawalId: integer('withdrawal_id'),
  copies: integer('copies').notNull(),
  contents: text('contents').notNull(),
  addedAt: text('added_at').notNull(),
  entryId: integer('entry_id').notNull(),
  removedEntryId: integer('removed_entry_id'),
  batchId: integer('batch_id'),
})
