import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import { KEPT_STATES } from '../domain/needs/need.ts'
import { POPULATION_GOALS } from '../domain/needs/population-goal.ts'
import { GROW_OUT_NOTES } from '../domain/season-plan/grow-out.ts'
import { ISOLATION_METHODS } from '../domain/season-plan/isolation-method.ts'

/** The needs of one season as they stood on a day, with what was chosen to be grown. Never changed. */
export const seasonList = sqliteTable('season_list', {
  id: integer('id').primaryKey(),
  /** The year of its sowing. */
  season: integer('season').notNull(),
  onDate: text('on_date').notNull(),
  grade: text('grade', { enum: POPULATION_GOALS }).notNull(),
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** One accession on a season list, in its order. */
export const seasonListLine = sqliteTable('season_list_line', {
  listId: integer('list_id').notNull(),
  ordinal: integer('ordinal').notNull(),
  accessionId: integer('accession_id').notNull(),
  chosen: integer('chosen', { mode: 'boolean' }).notNull(),
  state: text('state', { enum: KEPT_STATES }).notNull(),
  living: integer('living').notNull(),
  keep: integer('keep').notNull(),
  /** The chance, 0 to 1, that by the next sowing no full regrowing can be made. */
  cost: real('cost').notNull(),
  reason: text('reason').notNull(),
})

/** A garden where a grower raises seed. Changed in place; plans keep their own lines. */
export const growingSite = sqliteTable('growing_site', {
  id: integer('id').primaryKey(),
  name: text('name').notNull(),
  growerId: integer('grower_id'),
  /** Free bed, square metres. */
  areaM2: real('bed_area').notNull(),
  mostVarieties: integer('most_varieties').notNull(),
  /** Days without frost in a year. */
  seasonDays: integer('season_days'),
  /** Ids of crops that the grower takes, as JSON; an empty list: any. */
  takes: text('takes').notNull(),
  latitude: real('latitude'),
  longitude: real('longitude'),
  /** Placed by hand on a sketch: metres east and north of its middle. */
  eastM: real('east_m'),
  northM: real('north_m'),
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** What flowers near a site, and how far off. */
export const siteNeighbour = sqliteTable('site_neighbour', {
  siteId: integer('site_id').notNull(),
  cropId: text('crop_id').notNull(),
  metres: real('metres').notNull(),
})

/** Which accession goes to which site in a season. Never changed: a new plan is a new row. */
export const seasonPlan = sqliteTable('season_plan', {
  id: integer('id').primaryKey(),
  season: integer('season').notNull(),
  onDate: text('on_date').notNull(),
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
})

export const seasonPlanLine = sqliteTable('season_plan_line', {
  planId: integer('plan_id').notNull(),
  accessionId: integer('accession_id').notNull(),
  siteId: integer('site_id').notNull(),
  way: text('way', { enum: ISOLATION_METHODS }).notNull(),
})

/** One accession grown in one garden in one season, from the day on which a plan first had it so. */
export const growOut = sqliteTable('grow_out', {
  id: integer('id').primaryKey(),
  season: integer('season').notNull(),
  accessionId: integer('accession_id').notNull(),
  siteId: integer('site_id').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** What was seen of a grow-out during the season. Never changed: a slip is taken back. */
export const growOutNote = sqliteTable('grow_out_note', {
  id: integer('id').primaryKey(),
  growOutId: integer('grow_out_id').notNull(),
  kind: text('kind', { enum: GROW_OUT_NOTES }).notNull(),
  onDate: text('on_date').notNull(),
  /** Plants, or stored roots. */
  plants: integer('plants'),
  /** Why, where it failed. */
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
})
