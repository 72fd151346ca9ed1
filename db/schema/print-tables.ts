import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core'

/** One printing that the keeper confirmed. Taken back by its entry, its items wait again. */
export const printBatch = sqliteTable('print_batch', {
  id: integer('id').primaryKey(),
  kind: text('kind', { enum: ['label', 'letter', 'slip'] }).notNull(),
  sheet: text('sheet', { enum: ['a4-21', 'a4-24', 'a4-65', 'letter-30', 'letter-10', 'letter-80'] }),
  startAt: integer('start_at'),
  rightMm: real('right_mm'),
  downMm: real('down_mm'),
  printedAt: text('printed_at').notNull(),
  entryId: integer('entry_id').notNull(),
})

/**
 * Something to be printed. It waits while its entry stands, it was not taken out, and no standing batch printed it.
 * Names and contact data are looked up when it is printed and never kept here.
 */
export const printItem = sqliteTable('print_item', {
  id: integer('id').primaryKey(),
  kind: text('kind', { enum: ['label', 'letter', 'slip'] }).notNull(),
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
