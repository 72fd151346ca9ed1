import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import { COUNTED_UNITS } from '../domain/crops/counted-unit.ts'
import { SEED_EXTRACTIONS } from '../domain/season-plan/seed-extraction.ts'
import { PERSON_ROLES, PLACE_KINDS } from '../domain/shared/closed-sets.ts'
import type { LanguageCode } from '../messages/languages.ts'

export const person = sqliteTable('person', {
  id: integer('id').primaryKey(),
  name: text('name').notNull(),
  nameFolded: text('name_folded').notNull(),
  town: text('town').notNull(),
  creditAs: text('credit_as').notNull(),
  note: text('note').notNull(),
  createdOn: text('created_on').notNull(),
  /** What is written to this person in: BCP 47; empty: the library's language. */
  language: text('language').$type<LanguageCode | ''>().notNull().default(''),
  /** The record of the same person that this one was joined into; always one that is not joined itself. */
  mergedIntoId: integer('merged_into_id'),
})

/** Contact data, apart from the ledger, so that it can be erased without touching provenance. */
export const personContact = sqliteTable('person_contact', {
  personId: integer('person_id').primaryKey(),
  email: text('email').notNull(),
  phone: text('phone').notNull(),
  address: text('address').notNull(),
  mayWrite: integer('may_write', { mode: 'boolean' }).notNull(),
  consentOn: text('consent_on'),
})

export const personRole = sqliteTable('person_role', {
  personId: integer('person_id').notNull(),
  role: text('role', { enum: PERSON_ROLES }).notNull(),
})

/** A change to what is known of a person: before and after as JSON, so that it can be taken back. */
export const personChange = sqliteTable('person_change', {
  id: integer('id').primaryKey(),
  personId: integer('person_id').notNull(),
  field: text('field').notNull(),
  before: text('before').notNull(),
  after: text('after').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** The reference table of crops as shipped and the keeper's own crops, with the keeper's own values beside. Figures in the units of their names. */
export const crop = sqliteTable('crop', {
  id: text('id').primaryKey(),
  commonName: text('common_name').notNull(),
  nameFolded: text('name_folded').notNull(),
  species: text('species').notNull(),
  family: text('family').notNull(),
  hundredSeedWeightUg: integer('hundred_seed_weight_ug'),
  plausibleLowG: real('plausible_low_g'),
  plausibleHighG: real('plausible_high_g'),
  packetSeeds: integer('packet_seeds'),
  matingSystem: text('mating_system'),
  plantsForSeed: integer('plants_for_seed'),
  plantsToMaintain: integer('plants_to_maintain'),
  plantsToConserve: integer('plants_to_conserve'),
  federalMinimumPercent: integer('federal_minimum_percent'),
  stateMinimumPercent: integer('state_minimum_percent'),
  storageClass: text('storage_class'),
  storageYears: integer('storage_years'),
  pollination: text('pollination'),
  lifeCycle: text('life_cycle'),
  isolationHomeM: real('isolation_home_m'),
  isolationStrictM: real('isolation_strict_m'),
  bedArea: real('bed_area'),
  daysToSeed: integer('days_to_seed'),
  laterSowingDays: integer('later_sowing_days'),
  countedUnit: text('counted_unit', { enum: COUNTED_UNITS }).notNull().default('seed'),
  /** Of what is planted as a clove, a bulb or a tuber. */
  keepsMonths: integer('keeps_months'),
  seedExtraction: text('seed_extraction', { enum: SEED_EXTRACTIONS }),
  /** Of the seed viability equation, as JSON. */
  viabilityConstants: text('viability_constants'),
  /** Every cell of the shipped table with its source and confidence, as JSON. */
  reference: text('reference').notNull(),
  ownPlants: integer('own_plants'),
  ownThreshold: real('own_threshold'),
  ownDaysToSeed: integer('own_days_to_seed'),
  ownReason: text('own_reason').notNull(),
  /** The entry that added a crop of the keeper's own; null for one of the shipped table. */
  addedEntryId: integer('added_entry_id'),
})

/** A change to what the keeper says of a crop: before and after as JSON, so that it can be taken back. */
export const cropChange = sqliteTable('crop_change', {
  id: integer('id').primaryKey(),
  cropId: text('crop_id').notNull(),
  field: text('field').notNull(),
  before: text('before').notNull(),
  after: text('after').notNull(),
  entryId: integer('entry_id').notNull(),
})

export const variety = sqliteTable('variety', {
  id: integer('id').primaryKey(),
  cropId: text('crop_id').notNull(),
  name: text('name').notNull(),
  nameFolded: text('name_folded').notNull(),
  story: text('story').notNull(),
  /** The variety that this name was found to be of; its accessions are there. */
  mergedIntoId: integer('merged_into_id'),
})

/** Two names found to be of one variety: what moved from the joined one to the kept one, so that it can go back. */
export const varietyMerge = sqliteTable('variety_merge', {
  id: integer('id').primaryKey(),
  keptId: integer('kept_id').notNull(),
  joinedId: integer('joined_id').notNull(),
  /** Ids of the accessions that moved, as JSON. */
  accessions: text('accessions').notNull(),
  /** Ids of the other names that the kept one got by it, as JSON. */
  names: text('names').notNull(),
  entryId: integer('entry_id').notNull(),
})

export const varietySynonym = sqliteTable('variety_synonym', {
  id: integer('id').primaryKey(),
  varietyId: integer('variety_id').notNull(),
  name: text('name').notNull(),
  nameFolded: text('name_folded').notNull(),
})

export const storagePlace = sqliteTable('storage_place', {
  id: integer('id').primaryKey(),
  parentId: integer('parent_id'),
  name: text('name').notNull(),
  kind: text('kind', { enum: PLACE_KINDS }).notNull(),
  /** All names from the outermost place down, kept for lists. */
  path: text('path').notNull(),
})

/** What kind of place a place was before an entry and after it. */
export const placeChange = sqliteTable('place_change', {
  id: integer('id').primaryKey(),
  placeId: integer('place_id').notNull(),
  before: text('before', {
    enum: PLACE_KINDS,
  }).notNull(),
  after: text('after', { enum: PLACE_KINDS }).notNull(),
  entryId: integer('entry_id').notNull(),
})
