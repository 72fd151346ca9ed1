import { z } from 'zod'
import { Day, Id, LivingStock, NeedState, PopulationGoal, Story } from './fields.ts'
import { reads, writes } from './operation.ts'

export const SeasonDays = z.object({
  year: z.int().describe('a season is named after the year of its sowing'),
  sowing: Day,
  nextSowing: Day,
})

export const Sowing = z.object({
  lots: z
    .array(z.object({ lotId: Id, lotNumber: z.string(), seeds: z.int() }))
    .describe('the lot with most living seed, and the next ones where it alone is too small'),
  seeds: z.int().describe('to sow for one regrowing, or all that the best lot can risk'),
  enough: z.boolean().describe('whether the lots together hold as many as one regrowing takes'),
  expected: z.number().describe('plants to expect of them'),
  chance: z.number().min(0).max(1).describe('the chance that all the plants wanted come up'),
})

export type Sowing = z.infer<typeof Sowing>

export const NeedLine = z.object({
  rank: z.int().describe('1 is the most urgent of the whole collection'),
  accessionId: Id,
  accessionNumber: z.string(),
  variety: z.string(),
  crop: z.string(),
  state: NeedState,
  stock: LivingStock,
  cost: z
    .number()
    .min(0)
    .max(1)
    .describe('chance that by the next season’s sowing no full regrowing can be made any more'),
  costInWords: z.string(),
  regrowingsLeft: z.int(),
  sow: Sowing.nullable().describe('null where no living seed is left here'),
  demand: z.number().describe('seeds that members take in a year, over the last three'),
  onlySource: z.boolean().describe('no other accession of the variety and no duplicate elsewhere'),
  heldElsewhere: z.array(z.string()),
  generation: z.int(),
  growOut: z
    .object({ failed: z.boolean(), words: z.string() })
    .nullable()
    .describe('where it is being grown now, or failed of late; null where nowhere'),
  why: z.string().describe('what puts it where it stands, in one sentence'),
})
export type NeedLine = z.infer<typeof NeedLine>

const Arithmetic = z.object({ heading: z.string(), lines: z.array(z.string()) })

export const NeedRecord = NeedLine.extend({
  grade: PopulationGoal,
  gradeIsOwn: z.boolean(),
  plants: z.int(),
  plantsFrom: z.string(),
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
  rescue: z.array(z.string()).describe('advice for the last seeds; empty unless in rescue'),
  generations: z.array(z.object({ lotNumber: z.string(), generation: z.int(), plants: z.int().nullable() })),
  effectivePopulation: z.number().nullable().describe('null where no generation’s plants are known'),
  drift: z.string(),
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

export const regrowOperations = {
  'regeneration.list': reads(
    'Ranks what to regrow this season: every accession with its state, its reason and the cost of waiting.',
    z.strictObject({
      text: z.string().max(200).default(''),
      state: NeedState.optional(),
      offset: z.int().min(0).default(0),
      limit: z.int().min(1).max(500).default(100),
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
          accessionId: Id,
          accessionNumber: z.string(),
          variety: z.string(),
          crop: z.string(),
          chosen: z.boolean(),
          stateThen: NeedState,
          livingThen: z.int(),
          keepThen: z.int(),
          costThen: z.number(),
          reason: z.string(),
          stateNow: NeedState,
          livingNow: z.int(),
          became: z.string().describe('what was handed out to grow, and what came back, since the list'),
        }),
      ),
    }),
  ),
} as const
