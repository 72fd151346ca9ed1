import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core'

/** What is thought of each lot, kept so that a list need not work it out. One row a lot, from its first day on. */
export const lotForecast = sqliteTable('lot_forecast', {
  lotId: integer('lot_id').primaryKey(),
  /** The entry that changed what it rests on; empty: it holds. */
  staleSince: integer('stale_since'),
  computedOn: text('computed_on'),
  basis: text('basis', { enum: ['constants-seen', 'constants-from-memory', 'rule-of-thumb', 'refused'] }),
  viability: real('viability'),
  viabilityLow: real('viability_low'),
  viabilityHigh: real('viability_high'),
  viabilityStart: real('viability_start'),
  chanceBelow: real('chance_below'),
  deviatesAYear: real('deviates_a_year'),
  crossesEarly: text('crosses_early'),
  crossesOn: text('crosses_on'),
  crossesLate: text('crosses_late'),
})
