import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core'

/** The needs of one season as they stood on a day, with what was chosen to be grown. Never changed. */
export const seasonList = sqliteTable('season_list', {
  id: integer('id').primaryKey(),
  /** The year of its sowing. */
  season: integer('season').notNull(),
  onDate: text('on_date').notNull(),
  grade: text('grade', { enum: ['quality', 'maintenance', 'conservation'] }).notNull(),
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** One accession on a season list, in its order. */
export const seasonListLine = sqliteTable('season_list_line', {
  listId: integer('list_id').notNull(),
  ordinal: integer('ordinal').notNull(),
  accessionId: integer('accession_id').notNull(),
  chosen: integer('chosen', { mode: 'boolean' }).notNull(),
  state: text('state', { enum: ['rescue', 'regrow', 'watch', 'well-stocked'] }).notNull(),
  living: integer('living').notNull(),
  keep: integer('keep').notNull(),
  /** The chance, 0 to 1, that by the next sowing no full regrowing can be made. */
  cost: real('cost').notNull(),
  reason: text('reason').notNull(),
})
