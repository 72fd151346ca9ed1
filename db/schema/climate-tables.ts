import { integer, primaryKey, real, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import { PLACE_AIMS } from '../domain/climate/limits.ts'
import { INSPECTIONS } from '../domain/rounds/inspection.ts'
import { CONTAINER_KINDS, INSPECTION_OUTCOMES, MOISTURE_METHODS } from '../domain/shared/closed-sets.ts'

/** What a place is meant for; the latest standing row is in force. Hundredths of a degree C, per mille of RH. */
export const placeTerms = sqliteTable('place_terms', {
  id: integer('id').primaryKey(),
  placeId: integer('place_id').notNull(),
  aim: text('aim', { enum: PLACE_AIMS }).notNull(),
  highestCc: integer('highest_cc'),
  highestPm: integer('highest_pm'),
  roundDays: integer('round_days'),
  entryId: integer('entry_id').notNull(),
})

/** Readings of one place that came in together and are taken back together. */
export const climateBatch = sqliteTable('climate_batch', {
  id: integer('id').primaryKey(),
  placeId: integer('place_id').notNull(),
  fileName: text('file_name'),
  digest: text('digest'),
  readings: integer('readings').notNull(),
  leftOut: integer('left_out').notNull(),
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** A reading at a minute of the wall clock there: hundredths of a degree C, per mille of relative humidity. */
export const climateReading = sqliteTable(
  'climate_reading',
  {
    placeId: integer('place_id').notNull(),
    at: text('at').notNull(),
    batchId: integer('batch_id').notNull(),
    temperatureCc: integer('temperature_cc').notNull(),
    humidityPm: integer('humidity_pm'),
  },
  (table) => [primaryKey({ columns: [table.placeId, table.at, table.batchId] })],
)

/** What a lot is kept in, from a day on; the latest standing row is in force. */
export const lotContainer = sqliteTable('lot_container', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  kind: text('kind', { enum: CONTAINER_KINDS }).notNull(),
  airtight: integer('airtight', { mode: 'boolean' }).notNull(),
  pestProof: integer('pest_proof', { mode: 'boolean' }).notNull(),
  since: text('since').notNull(),
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** A measurement of a lot's moisture, percent of fresh weight, with what was observed as JSON. */
export const seedMoisture = sqliteTable('seed_moisture', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  measuredOn: text('measured_on').notNull(),
  method: text('method', { enum: MOISTURE_METHODS }).notNull(),
  percent: real('percent').notNull(),
  lowPercent: real('low_percent').notNull(),
  highPercent: real('high_percent').notNull(),
  observed: text('observed').notNull(),
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** One walk through the places. */
export const storageRound = sqliteTable('storage_round', {
  id: integer('id').primaryKey(),
  onDate: text('on_date').notNull(),
  walkedBy: text('walked_by').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** What a round looked for in one place, and how it was. */
export const roundCheck = sqliteTable('round_check', {
  id: integer('id').primaryKey(),
  roundId: integer('round_id').notNull(),
  placeId: integer('place_id').notNull(),
  lookedFor: text('looked_for', { enum: INSPECTIONS }).notNull(),
  outcome: text('outcome', { enum: INSPECTION_OUTCOMES }).notNull(),
  note: text('note').notNull(),
})

/** A lot that what was found concerns. */
export const roundCheckLot = sqliteTable('round_check_lot', {
  checkId: integer('check_id').notNull(),
  lotId: integer('lot_id').notNull(),
})
