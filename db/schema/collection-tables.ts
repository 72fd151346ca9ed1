import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import { POPULATION_GOALS } from '../domain/needs/population-goal.ts'
import {
  APPEARANCES,
  CHECK_RETURNS,
  COLLECTION_KINDS,
  MASS_UNITS,
  PAPER_SIZES,
  THRESHOLDS_OF,
} from '../domain/shared/closed-sets.ts'
import type { LanguageCode } from '../messages/languages.ts'

/** The one row that says what this file is and how its keeper wants it. */
export const collection = sqliteTable('collection', {
  id: integer('id').primaryKey(),
  uuid: text('uuid').notNull(),
  kind: text('kind', { enum: COLLECTION_KINDS }).notNull(),
  libraryName: text('library_name').notNull(),
  accessionPattern: text('accession_pattern').notNull(),
  regrowingsKept: integer('regrowings_kept').notNull(),
  emergence: real('emergence').notNull(),
  /** The chance that a regrowing makes all its plants, by which seed is sown and kept. */
  assurance: real('assurance').notNull(),
  viabilityThreshold: real('viability_threshold').notNull(),
  /** What the threshold is a part of: of all seeds, or of what was alive at the lot's start. */
  viabilityThresholdOf: text('viability_threshold_of', { enum: THRESHOLDS_OF }).notNull(),
  /** What a regrowing is for, and with that how many plants it takes. */
  grade: text('grade', { enum: POPULATION_GOALS }).notNull(),
  /** The day of the year on which a season is sown, MM-DD. */
  sowingDay: text('sowing_day').notNull(),
  /** BCP 47, one of those that the app speaks. */
  language: text('language').$type<LanguageCode>().notNull().default('en'),
  locale: text('locale').notNull(),
  /** What masses are written in; they are kept in milligrams. */
  massUnits: text('mass_units', { enum: MASS_UNITS }).notNull(),
  paper: text('paper', { enum: PAPER_SIZES }).notNull(),
  appearance: text('appearance', { enum: APPEARANCES }).notNull(),
  visitLimit: integer('visit_limit'),
  checkReturns: text('check_returns', { enum: CHECK_RETURNS }).notNull().default('by-risk'),
  /** Whether promises to bring seed back have a day on which they are due. */
  dueDates: integer('due_dates', { mode: 'boolean' }).notNull().default(false),
  /** Names and numbers for the sheet for a fire, a line each. */
  whomToCall: text('whom_to_call').notNull().default(''),
  /** Who signs the library's letters; empty: nobody by name. */
  keeper: text('keeper').notNull(),
  /** The thank-you letter in the library's own words; empty: as shipped. */
  letterWords: text('letter_words').notNull(),
  /** First names and surnames that the keeper wants left out of what goes out, folded. */
  maskedNames: text('masked_names', { mode: 'json' }).$type<string[]>().notNull().default([]),
  backupFolder: text('backup_folder').notNull(),
  backupLimitMb: integer('backup_limit_mb').notNull(),
  createdAt: text('created_at').notNull(),
})

/** The next running number of each series of accession numbers. */
export const numberSeries = sqliteTable('number_series', {
  series: text('series').primaryKey(),
  next: integer('next').notNull(),
})

/** One write, one row: what was asked, under which key, what was answered. The audit trail and the guard against repeats. */
export const entry = sqliteTable('entry', {
  id: integer('id').primaryKey(),
  key: text('key').notNull(),
  operation: text('operation').notNull(),
  inputDigest: text('input_digest').notNull(),
  answer: text('answer').notNull(),
  said: text('said').notNull(),
  recordedAt: text('recorded_at').notNull(),
  undoesId: integer('undoes_id'),
  /** Who did it, where they said so. */
  personId: integer('person_id'),
  /** The device it came from; empty: the keeper's own. */
  station: text('station').notNull().default(''),
  eventId: integer('event_id'),
  /** Covers the entry before and what this one recorded; empty in entries of versions before it. */
  hash: text('hash').notNull().default(''),
})

/** A day on which many come: a swap, a packing or a threshing party. Entries made on it belong to it. */
export const event = sqliteTable('event', {
  id: integer('id').primaryKey(),
  name: text('name').notNull(),
  onDate: text('on_date').notNull(),
  note: text('note').notNull(),
})

/** A text that an entry recorded, as its hash covers it. The salt goes when a person whom the text named is erased. */
export const entryText = sqliteTable('entry_text', {
  part: text('part').primaryKey(),
  entryId: integer('entry_id').notNull(),
  salt: text('salt').notNull(),
  digest: text('digest').notNull(),
})

/** What is typed on a screen and not in the book yet. Dropped when the screen is saved or given up. */
export const draft = sqliteTable('draft', {
  id: text('id').primaryKey(),
  /** One of the kinds that the contract lists; the file takes any, so that a new one needs no migration. */
  kind: text('kind').notNull(),
  text: text('text').notNull(),
  keptAt: text('kept_at').notNull(),
})
