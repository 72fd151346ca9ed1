import { z } from 'zod'
import { GROW_OUT_NOTES, GROW_OUT_STATES } from '../domain/season-plan/grow-out.ts'
import { ISOLATION_METHODS } from '../domain/season-plan/isolation-method.ts'
import {
  AccessionLine,
  CropId,
  Day,
  Id,
  Line,
  LivingStock,
  LotName,
  NeedState,
  PopulationGoal,
  PrintedPdf,
  pageOf,
  Story,
} from './fields.ts'
import { reads, writes } from './operation.ts'
import { says, Told } from './told.ts'

export const SeasonDays = z.object({
  year: z.int().describe('a season is named after the year of its sowing'),
  sowing: Day,
  nextSowing: Day,
})

export const Sowing = z.object({
  lots: z
    .array(z.object({ ...LotName, seeds: z.int() }))
    .describe('the lot with most living seed, and the next ones where it alone is too small'),
  seeds: z.int().describe('to sow for one regrowing, or all that the best lot can risk'),
  enough: z.boolean().describe('whether the lots together hold as many as one regrowing takes'),
  expected: z.number().describe('plants to expect of them'),
  chance: z.number().min(0).max(1).describe('the chance that all the plants wanted come up'),
})

export type Sowing = z.infer<typeof Sowing>

export const NeedLine = z.object({
  rank: z.int().describe('1 is the most urgent of the whole collection'),
  ...AccessionLine,
  state: NeedState,
  stock: LivingStock,
  cost: z
    .number()
    .min(0)
    .max(1)
    .describe('chance that by the next season’s sowing no full regrowing can be made any more'),
  costInWords: Told,
  regrowingsLeft: z.int(),
  sow: Sowing.nullable().describe('null where no living seed is left here'),
  demand: z.number().describe('seeds that members take in a year, over the last three'),
  onlySource: z.boolean().describe('no other accession of the variety and no duplicate elsewhere'),
  heldElsewhere: z.array(Told),
  generation: z.int(),
  growOut: z
    .object({ failed: z.boolean(), words: Told })
    .nullable()
    .describe('where it is being grown now, or failed of late; null where nowhere'),
  why: Told.describe('what puts it where it stands, in one sentence'),
})
export type NeedLine = z.infer<typeof NeedLine>

const Arithmetic = z.object({ heading: Told, lines: z.array(Told) })

export const NeedRecord = NeedLine.extend({
  grade: PopulationGoal,
  gradeIsOwn: z.boolean(),
  plants: z.int(),
  plantsFrom: Told,
  regrowings: z.int(),
  threshold: z.number(),
  assurance: z.number().describe('the chance of all its plants that is asked, 0.5 to 0.99'),
  arithmetic: z.array(Arithmetic),
  outlook: z.array(
    z.object({
      year: z.int(),
      sowing: Day,
      living: z.int(),
      low: z.int().describe('living less twice its deviation'),
      high: z.int(),
      cost: z.number(),
    }),
  ),
  rescue: z.array(Told).describe('advice for the last seeds; empty unless in rescue'),
  generations: z.array(z.object({ lotNumber: z.string(), generation: z.int(), plants: z.int().nullable() })),
  effectivePopulation: z.number().nullable().describe('null where no generation’s plants are known'),
  drift: z.array(Told).describe('what the generations did to it, sentence by sentence'),
})
export type NeedRecord = z.infer<typeof NeedRecord>

const SeasonListHead = z.object({
  listId: Id,
  season: z.int(),
  on: z.string(),
  grade: PopulationGoal,
  note: z.string(),
  accessions: z.int(),
  chosen: z.int(),
})
export type SeasonListHead = z.infer<typeof SeasonListHead>

const Kind = z.enum(GROW_OUT_NOTES)
const Lot = z.object(LotName)

export const GrowOutLine = z.object({
  growOutId: Id,
  season: z.int().describe('the year of its sowing'),
  harvestSeason: z.int().describe('the year of its harvest: the next for what takes two seasons'),
  ...AccessionLine,
  siteId: Id,
  site: z.string(),
  growerId: Id.nullable(),
  grower: z.string(),
  biennial: z.boolean(),
  state: z.enum(GROW_OUT_STATES),
  out: z
    .array(Lot.extend({ withdrawalId: Id, words: Told, on: z.string() }))
    .describe('seed that went out for it'),
  notes: z.array(
    z.object({
      entryId: Id.describe('to take the note back by'),
      kind: Kind,
      on: z.string(),
      plants: z.int().nullable(),
      note: z.string(),
      words: Told,
    }),
  ),
  next: z.array(Kind).describe('what can be noted, in order'),
  plantsSavedFrom: z.int().nullable(),
  back: z.array(Lot.extend({ on: z.string() })).describe('lots that came back of it'),
})
export type GrowOutLine = z.infer<typeof GrowOutLine>

const Metres = z.number().min(-1_000_000).max(1_000_000)

const SiteFacts = {
  name: Line,
  growerId: Id.nullable(),
  areaM2: z.number().positive().max(1_000_000).describe('free bed, square metres'),
  mostVarieties: z.int().min(1).max(500),
  seasonDays: z.int().min(1).max(366).nullable().describe('days without frost in a year; null: not known'),
  takes: z.array(z.string()).max(100).describe('crops that the grower takes; empty: any'),
  place: z
    .union([
      z.strictObject({ latitude: z.number().min(-90).max(90), longitude: z.number().min(-180).max(180) }),
      z.strictObject({ eastM: Metres, northM: Metres }),
    ])
    .nullable()
    .describe('on the earth, or metres on a sketch; null: not known, taken to be far from every other'),
  note: Story,
}

export const GrowingSite = z.object({
  siteId: Id,
  ...SiteFacts,
  grower: z.string(),
  neighbours: z.array(z.object({ cropId: CropId, crop: z.string(), metres: z.number() })),
  took: z.int().describe('grow-outs and promises to return that the grower took'),
  broughtBack: z.int(),
  reliability: z.number().min(0).max(1),
  position: z.object({ east: z.number(), north: z.number() }).nullable().describe('metres, on one map'),
})
export type GrowingSite = z.infer<typeof GrowingSite>

const Choice = z.strictObject({
  accessionId: Id,
  siteId: Id,
  way: z
    .enum(ISOLATION_METHODS)
    .default('open')
    .describe('how it is kept from crossing: in the open by distance, under a cover, or sown later'),
})

export const PlanLine = z.object({
  ...AccessionLine,
  siteId: Id,
  site: z.string(),
  growerId: Id.nullable(),
  grower: z.string(),
  way: z.enum(ISOLATION_METHODS),
  pollination: z.enum(['self', 'insect', 'wind']),
  hours: z.number().describe('hours of work that this way of growing adds'),
  laterDays: z
    .int()
    .nullable()
    .describe('days later to sow it so that it flowers after others of its group; null: not to be relied on'),
  apartInTime: Told.describe(
    'what is sown first and what follows, where time keeps it apart from others; may be empty',
  ),
  plants: z.int(),
  areaM2: z.number(),
  group: Told.describe('what it crosses with, by the everyday names of the crops'),
  isolationM: z.number().describe('metres to keep from others of the group, in round figures'),
  isolationWhy: Told.describe('where that distance comes from and how much it promises'),
  unknown: Told.describe('what the plan does not know of the crop and takes as usual; may be empty'),
  shortSeason: Told.describe(
    'said where the garden’s season is shorter than the crop usually needs; may be empty',
  ),
  biennial: z.boolean(),
  growOutId: Id.nullable().describe('to note its season by; null until a saved plan has it so'),
  seedOut: z.boolean().describe('whether seed went out for it'),
  became: z.array(Told).describe('what went out to be grown this season, and what came back'),
  sow: Sowing.nullable(),
  noSeed: z.array(Told).describe('why no seed can go out, lot by lot; empty where some can'),
  rescue: z
    .object({
      forKeeper: z.array(Told),
      forGrower: z.array(Told).describe('the part of it that goes on the grower’s sheet'),
    })
    .describe(
      'advice for the last seeds, as on the card of the need; empty where they make a full regrowing',
    ),
})
export type PlanLine = z.infer<typeof PlanLine>

const PlanClash = z.object({
  kind: z.enum(['isolation', 'neighbour', 'area', 'varieties', 'crop', 'way', 'twice']),
  sentence: Told,
  accessionIds: z.array(Id),
})

const Choices = z.array(Choice).max(500)

export const regenerationOperations = {
  'regeneration.list': reads(
    'Ranks what to regrow this season: every accession with its state, its reason and the cost of waiting.',
    z.strictObject({
      text: z.string().max(200).default(''),
      state: NeedState.optional(),
      ...pageOf(500, 100),
    }),
    z.object({
      season: SeasonDays,
      grade: PopulationGoal,
      counts: z.record(NeedState, z.int()),
      total: z.int().describe('accessions that the text and the state find'),
      needs: z.array(NeedLine),
    }),
  ),
  'regeneration.get': reads(
    'Opens the need of one accession: arithmetic line by line, the seasons to come, rescue, generations.',
    z.strictObject({ accessionId: Id }),
    NeedRecord,
  ),
  'season-list.create': writes(
    'Saves the needs of this season as they stand today, with what is to be grown.',
    {
      chosen: z.array(Id).max(5_000).describe('accessions to be grown this season'),
      note: Story.default(''),
    },
    { listId: Id },
  ),
  'season-list.list': reads(
    'Lists the saved season lists, latest first.',
    z.strictObject({}),
    z.object({ lists: z.array(SeasonListHead) }),
  ),
  'season-list.get': reads(
    'Opens a saved season list: what was chosen, and what became of it.',
    z.strictObject({ listId: Id }),
    z.object({
      list: SeasonListHead,
      lines: z.array(
        z.object({
          ...AccessionLine,
          chosen: z.boolean(),
          stateThen: NeedState,
          livingThen: z.int(),
          keepThen: z.int(),
          costThen: z.number(),
          reason: Told,
          stateNow: NeedState,
          livingNow: z.int(),
          became: z.array(Told).describe('what was handed out to grow, and what came back, since the list'),
        }),
      ),
    }),
  ),
  'grow-out.list': reads(
    'Lists what the saved plans have growing, this season’s first: what was noted, what can be noted next.',
    z.strictObject({}),
    z.object({ growOuts: z.array(GrowOutLine) }),
  ),
  'grow-out.record': writes(
    'Notes of a grow-out that it was sown, came up, flowered, was saved from or failed, with the day.',
    {
      growOutId: Id,
      kind: Kind,
      on: Day,
      plants: z
        .int()
        .min(1)
        .max(1_000_000)
        .nullable()
        .default(null)
        .describe('plants, or stored roots; must be told where seed is saved'),
      note: Story.default('').describe('why, where it failed'),
    },
    { growOut: GrowOutLine },
  ),
  'site.list': reads(
    'Lists the gardens of growers: bed, place, what they take, what flowers nearby, how reliable they were.',
    z.strictObject({}),
    z.object({ sites: z.array(GrowingSite) }),
  ),
  'site.change': writes(
    'Adds a garden, or changes one.',
    {
      siteId: Id.nullable().default(null),
      ...SiteFacts,
      seasonDays: SiteFacts.seasonDays.default(null),
      takes: SiteFacts.takes.default([]),
      place: SiteFacts.place.default(null),
      note: SiteFacts.note.default(''),
      neighbours: z
        .array(z.strictObject({ cropId: CropId, metres: z.number().min(0).max(100_000) }))
        .max(50)
        .default([]),
    },
    { siteId: Id },
  ),
  'season-plan.preview': reads(
    'Plans which accession goes to which garden: greedy first, then as an integer programme within a time limit.',
    z.strictObject({
      accessionIds: z.array(Id).max(500),
      locked: Choices.default([]).describe('choices that stay as they are'),
      seconds: z.number().min(0).max(30).default(8).describe('for the solver; 0: the greedy plan alone'),
    }),
    z.object({
      lines: z.array(PlanLine),
      by: z.enum(['solver', 'greedy']),
      worth: z.number(),
      greedyWorth: z.number(),
      gap: z
        .number()
        .nullable()
        .describe('how far from the best plan at most, 0.01 for 1 %; null: not known'),
      left: z.array(z.object({ accessionId: Id, variety: z.string(), why: Told })),
    }),
  ),
  'season-plan.check': reads(
    'Says what is wrong with a plan that was changed by hand.',
    z.strictObject({ choices: Choices }),
    z.object({ lines: z.array(PlanLine), clashes: z.array(PlanClash) }),
  ),
  'season-plan.create': writes(
    'Saves a plan for this season. Refused while something clashes.',
    { choices: Choices.min(1, says('fits.one-in-garden')), note: Story.default('') },
    { planId: Id },
  ),
  'season-plan.get': reads(
    'Opens the plan saved last.',
    z.strictObject({}),
    z.object({
      plan: z
        .object({ planId: Id, season: z.int(), on: z.string(), note: z.string(), lines: z.array(PlanLine) })
        .nullable(),
    }),
  ),
  'season-plan.print': reads(
    'Prints a sheet for each garden of the saved plan, or for one: what to grow, how, and when to bring seed back.',
    z.strictObject({ siteId: Id.nullable().default(null) }),
    z.object(PrintedPdf),
  ),
}
