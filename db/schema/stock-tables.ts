import { integer, real, sqliteTable, text } from 'drizzle-orm/sqlite-core'
import { POPULATION_GOALS } from '../domain/needs/population-goal.ts'
import {
  ACCESSION_POLICIES,
  BREEDING_STATUSES,
  CAUTION_KINDS,
  CHECK_OUTCOMES,
  COMPARED_WITH,
  FLOWERED_NEAR,
  LOT_BASES,
  LOT_RELATIONS,
  LOT_ROLES,
  MEASURED_OR_CARRIED,
  MOVEMENT_KINDS,
  SHARED_WITH,
  WITHDRAWAL_PURPOSES,
  YES_NO_NOT_KNOWN,
} from '../domain/shared/closed-sets.ts'

export const accession = sqliteTable('accession', {
  id: integer('id').primaryKey(),
  number: text('number').notNull(),
  /** The number without hyphens, as searched and scanned. */
  bare: text('bare').notNull(),
  series: text('series').notNull(),
  running: integer('running').notNull(),
  varietyId: integer('variety_id').notNull(),
  donorId: integer('donor_id'),
  receivedOn: text('received_on').notNull(),
  grownAt: text('grown_at').notNull(),
  story: text('story').notNull(),
  terms: text('terms').notNull(),
  ownPlants: integer('own_plants'),
  ownRegrowings: integer('own_regrowings'),
  ownThreshold: real('own_threshold'),
  ownAssurance: real('own_assurance'),
  ownGrade: text('own_grade', { enum: POPULATION_GOALS }),
  entryId: integer('entry_id').notNull(),
  donorWords: text('donor_words').notNull().default(''),
})

/** Who may have seed of a gift and what may be told of it; the latest standing row is in force. */
export const accessionTerms = sqliteTable('accession_terms', {
  id: integer('id').primaryKey(),
  accessionId: integer('accession_id').notNull(),
  share: text('share', { enum: SHARED_WITH }).notNull(),
  publishStory: integer('publish_story', { mode: 'boolean' }).notNull(),
  publishName: integer('publish_name', { mode: 'boolean' }).notNull(),
  mayBeSold: integer('may_be_sold', { mode: 'boolean' }).notNull(),
  /** The authority or the agreement that the terms rest on. */
  agreement: text('agreement').notNull(),
  agreementEnds: text('agreement_ends'),
  /** The text and the address of a label that a community issued. */
  communityLabel: text('community_label').notNull(),
  communityLink: text('community_link').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** How an accession was bred and whether the library keeps it; the latest standing row is in force. */
export const accessionPolicy = sqliteTable('accession_policy', {
  id: integer('id').primaryKey(),
  accessionId: integer('accession_id').notNull(),
  breedingStatus: text('breeding_status', { enum: BREEDING_STATUSES }).notNull(),
  policy: text('policy', { enum: ACCESSION_POLICIES }).notNull(),
  onDate: text('on_date').notNull(),
  reason: text('reason').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** What a lot has to be careful about, from the day it was said. */
export const lotCaution = sqliteTable('lot_caution', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  caution: text('caution', { enum: CAUTION_KINDS }).notNull(),
  onDate: text('on_date').notNull(),
  note: text('note').notNull(),
  /** Null in rows of versions that did not keep who said it. */
  entryId: integer('entry_id'),
})

/** That a caution holds for a lot no more. */
export const lotCautionEnd = sqliteTable('lot_caution_end', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  caution: text('caution', { enum: CAUTION_KINDS }).notNull(),
  onDate: text('on_date').notNull(),
  reason: text('reason').notNull(),
  entryId: integer('entry_id').notNull(),
})

export const lot = sqliteTable('lot', {
  id: integer('id').primaryKey(),
  accessionId: integer('accession_id').notNull(),
  ordinal: integer('ordinal').notNull(),
  number: text('number').notNull(),
  bare: text('bare').notNull(),
  role: text('role', { enum: LOT_ROLES }).notNull(),
  basis: text('basis', { enum: LOT_BASES }).notNull(),
  harvestFrom: integer('harvest_from'),
  harvestTo: integer('harvest_to'),
  harvestAbout: integer('harvest_about', { mode: 'boolean' }).notNull(),
  generation: integer('generation').notNull(),
  growerId: integer('grower_id'),
  grownAt: text('grown_at').notNull(),
  plantsGrown: integer('plants_grown'),
  placeId: integer('place_id'),
  heldBy: text('held_by').notNull(),
  heldSince: text('held_since'),
  quarantineReason: text('quarantine_reason'),
  /** Whether the count rests on somebody's guess and has not been counted since. */
  estimated: integer('estimated', { mode: 'boolean' }).notNull(),
  /** The hundred-seed weight in force; null means the crop's typical weight. */
  weightId: integer('weight_id'),
  /** The germination result in force: the latest not taken back. */
  germinationId: integer('germination_id'),
  /** Kept balances, by trigger: always the sums of the lot's movements. */
  balanceCount: integer('balance_count').notNull(),
  balanceMassMg: integer('balance_mass_mg').notNull(),
  entryId: integer('entry_id').notNull(),
})

export const lotParent = sqliteTable('lot_parent', {
  lotId: integer('lot_id').notNull(),
  parentLotId: integer('parent_lot_id').notNull(),
  relation: text('relation', { enum: LOT_RELATIONS }).notNull(),
})

export const lotPlace = sqliteTable('lot_place', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  placeId: integer('place_id').notNull(),
  since: text('since').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** A change to what is known of a lot, apart from its seed: before and after as JSON, so that it can be taken back. */
export const lotChange = sqliteTable('lot_change', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  field: text('field').notNull(),
  before: text('before').notNull(),
  after: text('after').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** A measurement of a lot's hundred-seed weight; micrograms per hundred. */
export const seedWeight = sqliteTable('seed_weight', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  measuredOn: text('measured_on').notNull(),
  hundredSeedWeightUg: integer('hundred_seed_weight_ug').notNull(),
  replicates: integer('replicates').notNull(),
  seedsCounted: integer('seeds_counted').notNull(),
  coefficientOfVariation: real('coefficient_of_variation'),
  chaffy: integer('chaffy', { mode: 'boolean' }).notNull(),
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
  pooledDoubt: real('pooled_doubt'),
})

export const seedWeightReplicate = sqliteTable('seed_weight_replicate', {
  weightId: integer('weight_id').notNull(),
  ordinal: integer('ordinal').notNull(),
  seeds: integer('seeds').notNull(),
  massMg: integer('mass_mg').notNull(),
})

/** The ledger. Append-only by trigger: a mistake is reversed by its exact opposite. */
export const movement = sqliteTable('movement', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  entryId: integer('entry_id').notNull(),
  kind: text('kind', {
    enum: MOVEMENT_KINDS,
  }).notNull(),
  onDate: text('on_date').notNull(),
  count: integer('count').notNull(),
  massMg: integer('mass_mg').notNull(),
  measured: text('measured', { enum: MEASURED_OR_CARRIED }).notNull(),
  /** Micrograms per hundred seeds used to derive the other number; null where both were carried over. */
  weightUg: integer('weight_ug'),
  personId: integer('person_id'),
  withdrawalId: integer('withdrawal_id'),
  reversesId: integer('reverses_id'),
  note: text('note').notNull(),
})

/** One visit on which seed went out. */
export const withdrawal = sqliteTable('withdrawal', {
  id: integer('id').primaryKey(),
  personId: integer('person_id'),
  onDate: text('on_date').notNull(),
  purpose: text('purpose', {
    enum: WITHDRAWAL_PURPOSES,
  }).notNull(),
  promised: text('promised').notNull(),
  promisedBy: text('promised_by'),
  note: text('note').notNull(),
  overridden: text('overridden').notNull(),
  growOutId: integer('grow_out_id'),
  entryId: integer('entry_id').notNull(),
})

/** A promise to bring seed back that the library no longer waits for. */
export const promiseWaiver = sqliteTable('promise_waiver', {
  id: integer('id').primaryKey(),
  withdrawalId: integer('withdrawal_id').notNull(),
  onDate: text('on_date').notNull(),
  reason: text('reason').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** Seed brought back by somebody who grew it: the new lot, and the visit it came from where known. */
export const seedReturn = sqliteTable('seed_return', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  withdrawalId: integer('withdrawal_id'),
  personId: integer('person_id').notNull(),
  onDate: text('on_date').notNull(),
  note: text('note').notNull(),
  growOutId: integer('grow_out_id'),
  entryId: integer('entry_id').notNull(),
})

/** What was answered at the table when seed came back. */
export const returnAnswer = sqliteTable('return_answer', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  floweredNear: text('flowered_near', { enum: FLOWERED_NEAR }).notNull(),
  nearNote: text('near_note').notNull(),
  /** Anything unlike the rest, sick or wet; empty: nothing. */
  odd: text('odd').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** How a return or a harvest was found when the keeper checked it; the latest standing row is in force. */
export const returnCheck = sqliteTable('return_check', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  dry: text('dry', { enum: YES_NO_NOT_KNOWN }).notNull(),
  clean: text('clean', { enum: YES_NO_NOT_KNOWN }).notNull(),
  trueToType: text('true_to_type', { enum: YES_NO_NOT_KNOWN }).notNull(),
  comparedWith: text('compared_with', { enum: COMPARED_WITH }).notNull(),
  outcome: text('outcome', { enum: CHECK_OUTCOMES }).notNull(),
  onDate: text('on_date').notNull(),
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
})

/** What the holder of a safety duplicate agreed to; the latest standing row is in force. */
export const duplicateTerms = sqliteTable('duplicate_terms', {
  id: integer('id').primaryKey(),
  lotId: integer('lot_id').notNull(),
  contact: text('contact').notNull(),
  agreement: text('agreement').notNull(),
  agreementEnds: text('agreement_ends'),
  conditions: text('conditions').notNull(),
  nextLook: text('next_look'),
  entryId: integer('entry_id').notNull(),
})

/** What an institution asked for with a hand-out; the latest standing row is in force. */
export const institutionRequest = sqliteTable('institution_request', {
  id: integer('id').primaryKey(),
  withdrawalId: integer('withdrawal_id').notNull(),
  askedOn: text('asked_on'),
  intendedUse: text('intended_use').notNull(),
  agreement: text('agreement').notNull(),
  plantHealth: text('plant_health').notNull(),
  sentOn: text('sent_on'),
  entryId: integer('entry_id').notNull(),
})

/** What an institution told of seed that it was given. */
export const institutionReport = sqliteTable('institution_report', {
  id: integer('id').primaryKey(),
  withdrawalId: integer('withdrawal_id').notNull(),
  onDate: text('on_date').notNull(),
  note: text('note').notNull(),
  entryId: integer('entry_id').notNull(),
})
