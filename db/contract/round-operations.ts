import { z } from 'zod'
import { INSPECTIONS } from '../domain/rounds/inspection.ts'
import { Day, Id } from './fields.ts'
import { reads, writes } from './operation.ts'
import { ReadOff } from './storage-operations.ts'

const Looked = z.enum(INSPECTIONS)

const RoundLot = z.object({
  lotId: Id,
  lotNumber: z.string(),
  variety: z.string(),
  crop: z.string(),
  place: z.string(),
  quarantined: z.boolean(),
})

const RoundStop = z.object({
  placeId: Id,
  path: z.string(),
  everyDays: z.int(),
  lastOn: z.string().nullable().describe('null: never walked to'),
  due: z.object({ on: z.string(), when: z.enum(['late', 'today', 'later']) }),
  looks: z.array(z.object({ look: Looked, name: z.string(), words: z.string() })),
  lots: z
    .array(RoundLot)
    .describe('with seed, there and inside it, but for places with a rhythm of their own'),
})
export type RoundStop = z.infer<typeof RoundStop>

const RoundFinding = z.object({
  placeId: Id,
  path: z.string(),
  look: Looked,
  name: z.string(),
  note: z.string(),
  lots: z.array(z.object({ lotId: Id, lotNumber: z.string() })),
})

export const roundOperations = {
  'round.list-due': reads(
    'Lists the places that a round goes to, what to look at in each, and when it is due.',
    z.strictObject({}),
    z.object({
      places: z.array(RoundStop).describe('the one due first comes first'),
      toWalk: z.int().describe('late or due today'),
      cautions: z.array(z.string()),
      unvisited: z
        .array(z.object({ placeId: Id, path: z.string() }))
        .describe('outermost places with lots, there or inside, to which no round goes'),
    }),
  ),
  'round.record': writes(
    'Writes a round down: what was looked at in each place and what was found; lots concerned can go into quarantine. A place without a rhythm may be looked at too; it is not due again.',
    {
      on: Day,
      walkedBy: z.string().trim().max(200).default(''),
      places: z
        .array(
          z.strictObject({
            placeId: Id,
            checks: z
              .array(
                z.strictObject({
                  look: Looked.exclude(['reading']),
                  outcome: z.enum(['fine', 'found']),
                  note: z.string().trim().max(2_000).default('').describe('what was found'),
                  lotIds: z.array(Id).max(1_000).default([]).describe('the lots concerned; none: the place'),
                  quarantine: z.boolean().default(false).describe('those lots go into quarantine'),
                }),
              )
              .default([]),
            reading: ReadOff.nullable().default(null).describe('what the instruments there say'),
          }),
        )
        .min(1, 'Look at one place at least.')
        .max(500),
    },
    { found: z.int(), quarantined: z.int() },
  ),
  'round.list': reads(
    'Lists the rounds that were walked, the latest first, with what they found.',
    z.strictObject({
      placeId: Id.optional().describe('only rounds that went there'),
      offset: z.int().min(0).default(0),
      limit: z.int().min(1).max(200).default(20),
    }),
    z.object({
      rounds: z.array(
        z.object({
          entryId: Id,
          on: z.string(),
          walkedBy: z.string(),
          places: z.int(),
          findings: z.array(RoundFinding),
        }),
      ),
      total: z.int(),
    }),
  ),
  'round.print': reads(
    'Makes the round sheet: what to look at in each place, to be ticked on paper.',
    z.strictObject({
      placeIds: z.array(Id).max(500).default([]).describe('none named: every place that a round goes to'),
    }),
    z.object({
      pdf: z.string().describe('the PDF, base64'),
      fileName: z.string(),
      pages: z.int(),
      warnings: z.array(z.string()),
    }),
  ),
} as const
