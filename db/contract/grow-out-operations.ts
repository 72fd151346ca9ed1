import { z } from 'zod'
import { GROW_OUT_NOTES, GROW_OUT_STATES } from '../domain/season-plan/grow-out.ts'
import { Day, Id, Story } from './fields.ts'
import { reads, writes } from './operation.ts'

const Kind = z.enum(GROW_OUT_NOTES)
const Lot = z.object({ lotId: Id, lotNumber: z.string() })

export const GrowOutLine = z.object({
  growOutId: Id,
  season: z.int().describe('the year of its sowing'),
  harvestSeason: z.int().describe('the year of its harvest: the next for what takes two seasons'),
  accessionId: Id,
  accessionNumber: z.string(),
  variety: z.string(),
  crop: z.string(),
  siteId: Id,
  site: z.string(),
  growerId: Id.nullable(),
  grower: z.string(),
  biennial: z.boolean(),
  state: z.enum(GROW_OUT_STATES),
  out: z
    .array(Lot.extend({ withdrawalId: Id, words: z.string(), on: z.string() }))
    .describe('seed that went out for it'),
  notes: z.array(
    z.object({
      entryId: Id.describe('to take the note back by'),
      kind: Kind,
      on: z.string(),
      plants: z.int().nullable(),
      note: z.string(),
      words: z.string(),
    }),
  ),
  next: z.array(Kind).describe('what can be noted, in order'),
  plantsSavedFrom: z.int().nullable(),
  back: z.array(Lot.extend({ on: z.string() })).describe('lots that came back of it'),
})
export type GrowOutLine = z.infer<typeof GrowOutLine>

export const growOutOperations = {
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
} as const
