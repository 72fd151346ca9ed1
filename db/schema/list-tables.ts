import { integer, sqliteTable, text } from 'drizzle-orm/sqlite-core'

/** What a list said of an accession that has no column of its own, by its MCPD code. */
export const accessionPassport = sqliteTable('accession_passport', {
  accessionId: integer('accession_id').notNull(),
  code: text('code').notNull(),
  value: text('value').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** Gifts that came in together from one file. */
export const listBatch = sqliteTable('list_batch', {
  id: integer('id').primaryKey(),
  fileName: text('file_name').notNull(),
  digest: text('digest').notNull(),
  taken: integer('taken').notNull(),
  leftOut: integer('left_out').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** What the columns of a list mean, remembered by its headings. */
export const listColumns = sqliteTable('list_columns', {
  headings: text('headings').primaryKey(),
  columns: text('columns').notNull(),
  entryId: integer('entry_id').notNull(),
})
