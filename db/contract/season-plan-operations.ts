import { z } from 'zod'
import { ISOLATION_METHODS } from '../domain/season-plan/isolation-method.ts'
import { CropId, Id, Line, Story } from './fields.ts'
import { reads, writes } from './operation.ts'
import { Sowing } from './regrow-operations.ts'

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
  accessionId: Id,
  accessionNumber: z.string(),
  variety: z.string(),
  crop: z.string(),
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
  apartInTime: z
    .string()
    .describe('what is sown first and what follows, where time keeps it apart from others; may be empty'),
  plants: z.int(),
  areaM2: z.number(),
  group: z.string().describe('what it crosses with, by the everyday names of the crops'),
  isolationM: z.number().describe('metres to keep from others of the group, in round figures'),
  isolationWhy: z.string().describe('where that distance comes from and how much it promises'),
  unknown: z.string().describe('what the plan does not know of the crop and takes as usual; may be empty'),
  shortSeason: z
    .string()
    .describe('said where the garden’s season is shorter than the crop usually needs; may be empty'),
  biennial: z.boolean(),
  growOutId: Id.nullable().describe('to note its season by; null until a saved plan has it so'),
  seedOut: z.boolean().describe('whether seed went out for it'),
  became: z.string().describe('what went out to be grown this season, and what came back'),
  sow: Sowing.nullable(),
  noSeed: z.string().describe('why no seed can go out; empty where some can'),
  rescue: z
    .object({
      forKeeper: z.array(z.string()),
      forGrower: z.array(z.string()).describe('the part of it that goes on the grower’s sheet'),
    })
    .describe(
      'advice for the last seeds, as on the card of the need; empty where they make a full regrowing',
    ),
})
export type PlanLine = z.infer<typeof PlanLine>

const PlanClash = z.object({
  kind: z.enum(['isolation', 'neighbour', 'area', 'varieties', 'crop', 'way', 'twice']),
  sentence: z.string(),
  accessionIds: z.array(Id),
})

const Choices = z.array(Choice).max(500)

export const seasonPlanOperations = {
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
      left: z.array(z.object({ accessionId: Id, variety: z.string(), why: z.string() })),
    }),
  ),
  'season-plan.check': reads(
    'Says what is wrong with a plan that was changed by hand.',
    z.strictObject({ choices: Choices }),
    z.object({ lines: z.array(PlanLine), clashes: z.array(PlanClash) }),
  ),
  'season-plan.create': writes(
    'Saves a plan for this season. Refused while something clashes.',
    { choices: Choices.min(1, 'Put at least one variety into a garden.'), note: Story.default('') },
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
    z.object({ pdf: z.base64(), fileName: z.string(), pages: z.int(), warnings: z.array(z.string()) }),
  ),
} as const
