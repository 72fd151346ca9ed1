import { z } from 'zod'
import { COUNTED_UNITS } from '../domain/crops/counted-unit.ts'
import { LIFE_CYCLES } from '../domain/crops/life-cycle.ts'
import { BREEDINGS } from '../domain/needs/population-goal.ts'
import { POLLINATIONS } from '../domain/season-plan/isolation-method.ts'
import { SEED_EXTRACTIONS } from '../domain/season-plan/seed-extraction.ts'
import { CountedUnit, CropId, Id, Line, Search, Story } from './fields.ts'
import { reads, writes } from './operation.ts'
import { Told } from './told.ts'

/** The constants of the seed viability equation, which belong together; bounds well beyond every published set. */
const ViabilityFigures = z.strictObject({
  ke: z.number().min(1).max(20),
  cw: z.number().min(1).max(15),
  ch: z.number().min(0).max(0.2),
  cq: z.number().min(0.00001).max(0.01),
})

const Metres = z.number().min(1).max(10_000).nullable()

/** How a crop is grown for seed, of the table or as the keeper says it; null: not known. */
const Growing = {
  isolationHomeM: Metres.describe('metres to what it crosses with, in a garden'),
  isolationStrictM: Metres.describe('metres to what it crosses with, at conservation grade'),
  laterSowingDays: z
    .int()
    .min(7)
    .max(120)
    .nullable()
    .describe('days later to sow it so that it flowers after others of its kind; null: not to be relied on'),
  bedArea: z.number().min(0.001).max(100).nullable().describe('square metres of bed for one plant'),
  seedExtraction: z.enum(SEED_EXTRACTIONS).nullable().describe('how seed is got out of what it ripens in'),
  viabilityConstants: ViabilityFigures.nullable(),
}

/** A value of the crop table with where it comes from and how sure that is. */
const Sourced = z.object({ source: z.string(), confidence: z.string() })

export const CropDetail = z.object({
  cropId: CropId,
  commonName: z.string(),
  species: z.string(),
  family: z.string(),
  countedUnit: CountedUnit,
  keepsMonths: z.int().nullable().describe('months that a clove, a bulb or a tuber keeps'),
  hundredSeedWeightG: z.number().nullable(),
  plausibleWeightG: z.tuple([z.number(), z.number()]).nullable(),
  packetSeeds: z.int().nullable(),
  matingSystem: z.string().nullable(),
  pollination: z.string().nullable(),
  lifeCycle: z.string().nullable(),
  ...Growing,
  plantsToKeep: z.int().nullable().describe('plants grown for seed in one regrowing'),
  plantsToKeepIsOverride: z.boolean(),
  viabilityThreshold: z.number().nullable(),
  viabilityThresholdIsOverride: z.boolean(),
  daysToSeed: z
    .int()
    .nullable()
    .describe(
      'days without frost from sowing to ripe seed; null: frost does not bound it, or nothing is known',
    ),
  daysToSeedIsOverride: z.boolean(),
  ownReason: z.string().describe("why the keeper's own figures stand in place of the usual ones"),
  assumedViability: z.number(),
  assumedViabilityNote: Told,
  storageClass: z.string().nullable(),
  notes: z.string().nullable(),
  own: z.boolean().describe("a crop of the keeper's own, not of the shipped table"),
  unknown: z.array(Told).describe('what is not known of the crop, and what is done without it'),
  caution: Told.describe('the usual caution for a plant of that name; may be empty'),
  facts: z.array(z.object({ field: z.string(), value: z.string(), sourced: Sourced })),
})

/** What a keeper may say of a crop of their own. What is left out stays unknown. */
const CropFacts = {
  name: Line.describe('the everyday name'),
  species: Line.or(z.literal('')).describe('the botanical name; empty: not known'),
  family: Line.or(z.literal('')).describe('empty: not known'),
  packetSeeds: z.int().min(1).max(100_000).nullable().describe('seeds of a usual packet; null: not known'),
  hundredSeedWeightG: z
    .number()
    .min(0.0001)
    .max(10_000)
    .nullable()
    .describe('grams of one hundred seeds; null: not known'),
  countedUnit: z.enum(COUNTED_UNITS).describe('what is weighed, sown and scored as one'),
  keepsMonths: z
    .int()
    .min(1)
    .max(24)
    .nullable()
    .describe('months that a clove, a bulb or a tuber keeps; null: not known'),
  matingSystem: z.enum(BREEDINGS).nullable(),
  pollination: z.enum(POLLINATIONS).nullable(),
  lifeCycle: z.enum(LIFE_CYCLES).nullable(),
  ...Growing,
}

/** A crop of the keeper's own: only its everyday name is needed. */
export const CropFields = {
  name: CropFacts.name,
  species: CropFacts.species.default(''),
  family: CropFacts.family.default(''),
  packetSeeds: CropFacts.packetSeeds.default(null),
  hundredSeedWeightG: CropFacts.hundredSeedWeightG.default(null),
  countedUnit: CropFacts.countedUnit.default('seed'),
  keepsMonths: CropFacts.keepsMonths.default(null),
  matingSystem: CropFacts.matingSystem.default(null),
  pollination: CropFacts.pollination.default(null),
  lifeCycle: CropFacts.lifeCycle.default(null),
  isolationHomeM: CropFacts.isolationHomeM.default(null),
  isolationStrictM: CropFacts.isolationStrictM.default(null),
  laterSowingDays: CropFacts.laterSowingDays.default(null),
  bedArea: CropFacts.bedArea.default(null),
  seedExtraction: CropFacts.seedExtraction.default(null),
  viabilityConstants: CropFacts.viabilityConstants.default(null),
}

export const VarietyLine = z.object({
  varietyId: Id,
  name: z.string(),
  cropId: CropId,
  cropName: z.string(),
  synonyms: z.array(z.string()),
  matched: z.string().describe('the name that matched, where it is a synonym'),
  accessions: z.int(),
})

export const referenceOperations = {
  'crop.list': reads(
    "Lists every crop: those of the reference table and the keeper's own.",
    z.strictObject({}),
    z.object({
      crops: z.array(
        z.object({
          cropId: CropId,
          commonName: z.string(),
          species: z.string(),
          names: z
            .array(z.string())
            .readonly()
            .describe('what people call it, in English, German, French and Spanish'),
          place: z.int().describe('among crops that share a name: the lowest is the commonest meaning'),
          own: z.boolean(),
          packetSeeds: z.int().nullable(),
        }),
      ),
    }),
  ),
  'crop.get': reads(
    'Shows a crop with the source of each value.',
    z.strictObject({ cropId: CropId }),
    CropDetail,
  ),
  'crop.change-policy': writes(
    "Sets the keeper's own plants per regrowing, viability threshold or days to ripe seed for a crop; null goes back to the table.",
    {
      cropId: CropId,
      plantsToKeep: z.int().min(1).max(10_000).nullable().optional(),
      viabilityThreshold: z.number().min(0.05).max(1).nullable().optional(),
      daysToSeed: z.int().min(20).max(366).nullable().optional(),
      reason: Line,
    },
    {},
  ),
  'crop.create': writes(
    "Adds a crop of the keeper's own, by its everyday name. Whatever else is not said of it stays unknown.",
    CropFields,
    { cropId: CropId },
  ),
  'crop.change': writes(
    "Corrects what is known of a crop of the keeper's own; its lots that were never weighed are recomputed where its weight changes.",
    { cropId: CropId, correction: z.strictObject(CropFacts).partial() },
    {},
  ),
  'variety.search': reads(
    'Finds varieties by a few letters of any of their names, accents or not.',
    Search.extend({ cropId: CropId.optional() }),
    z.object({ varieties: z.array(VarietyLine) }),
  ),
  'variety.create': writes(
    'Adds a variety of a crop.',
    { cropId: CropId, name: Line, synonyms: z.array(Line).default([]), story: Story.default('') },
    { varietyId: Id },
  ),
  'variety.add-name': writes(
    'Adds another name by which a variety is known.',
    { varietyId: Id, name: Line },
    {},
  ),
  'variety.merge': writes(
    'Joins two records of one variety: the accessions and names of the joined one become the kept one’s.',
    { keepId: Id, joinId: Id },
    { accessions: z.int().describe('how many moved') },
  ),
}
