import { z } from 'zod'
import { BREAK_CLASSES } from '../domain/moisture/break-check.ts'
import { USUAL_DRYING_GOAL } from '../domain/moisture/drying.ts'
import { Day, Id, Story } from './fields.ts'
import { reads, writes } from './operation.ts'
import { TemperatureUnit } from './storage-operations.ts'

const Grams = z.number().positive('Write a mass in grams, above 0.').max(1_000_000)
const Percent = z.number().min(0).max(100)
const Goal = z
  .number()
  .min(2, 'No seed is dried below 2 %.')
  .max(30, 'Seed above 30 % is not dry by any measure.')

export const ContainerKind = z.enum(['envelope', 'bag', 'jar', 'can', 'other'])

/** How moisture was measured, with what was seen. */
const Measured = z.discriminatedUnion('method', [
  z.strictObject({
    method: z.literal('oven'),
    freshGrams: Grams.describe('before the oven, with the dish'),
    dryGrams: Grams.describe('after the oven, with the dish'),
    dishGrams: z.number().min(0).max(100_000).default(0),
  }),
  z.strictObject({
    method: z.literal('sealed-jar'),
    humidity: Percent.describe('relative humidity in the closed jar, percent'),
    temperature: z.number().min(-100).max(212),
    unit: TemperatureUnit.default('C'),
  }),
  z.strictObject({ method: z.literal('break-check'), gives: z.enum(BREAK_CLASSES) }),
  z.strictObject({
    method: z.literal('meter'),
    percent: z.number().min(0.1).max(99).describe('percent of fresh weight'),
  }),
])
export type Measured = z.infer<typeof Measured>

const Moisture = z.object({
  percent: z.number().describe('percent of fresh weight; of a coarse class its middle'),
  low: Percent,
  high: Percent,
  words: z.string(),
  advice: z.array(z.string()).describe('what follows for storing and freezing'),
})
export type Moisture = z.infer<typeof Moisture>

export const MoveCaution = z.object({ lotId: Id, lotNumber: z.string(), sentence: z.string() })

export const LotStorage = z.object({
  lotId: Id,
  container: z
    .object({
      kind: ContainerKind,
      airtight: z.boolean(),
      pestProof: z.boolean(),
      since: z.string(),
      note: z.string(),
      words: z.string(),
    })
    .nullable(),
  moistures: z.array(
    Moisture.omit({ advice: true }).extend({
      on: z.string(),
      method: z.enum(['oven', 'sealed-jar', 'break-check', 'meter']),
      note: z.string(),
    }),
  ),
  cautions: z.array(z.string()),
  stays: z.array(
    z.object({
      placeId: Id,
      place: z.string(),
      from: z.string(),
      until: z.string().nullable(),
      words: z.string().describe('how warm and damp it was there; empty where nobody measured'),
    }),
  ),
  findings: z
    .array(z.object({ on: z.string(), place: z.string(), words: z.string() }))
    .describe('what rounds found of it, the latest first'),
})
export type LotStorage = z.infer<typeof LotStorage>

export const lotStorageOperations = {
  'lot.get-storage': reads(
    'Shows what a lot is kept in, how moist it was found, and what the places where it lay were like.',
    z.strictObject({ lotId: Id }),
    LotStorage,
  ),
  'lot.change-container': writes(
    'Writes down what lots are kept in from a day on.',
    {
      lotIds: z.array(Id).min(1).max(1_000),
      kind: ContainerKind,
      airtight: z.boolean(),
      pestProof: z.boolean().describe('whether insects and rodents cannot get in'),
      since: Day,
      note: Story.default(''),
    },
    {},
  ),
  'moisture.preview': reads(
    'Says what a measurement of seed moisture comes to, without writing it down.',
    z.strictObject({ lotId: Id, measured: Measured }),
    Moisture,
  ),
  'moisture.record': writes(
    'Writes down how moist the seed of a lot was found.',
    { lotId: Id, on: Day, measured: Measured, note: Story.default('') },
    { moisture: Moisture },
  ),
  'moisture.plan-drying': reads(
    'Says at which mass seed is dry, how much water goes and how much drying gel takes it up.',
    z.strictObject({
      grams: Grams,
      from: z.number().min(0.1).max(60).describe('moisture now, percent of fresh weight'),
      to: Goal.default(USUAL_DRYING_GOAL),
    }),
    z.object({
      plan: z
        .object({ stopAt: z.number(), water: z.number(), gel: z.number() })
        .nullable()
        .describe('grams; null where the seed is at the goal already'),
      words: z.string(),
      assumptions: z.array(z.string()),
      cautions: z.array(z.string()),
    }),
  ),
  'lot.preview-move': reads(
    'Says what speaks against moving lots to a place: seed too moist to freeze above all.',
    z.strictObject({ lotIds: z.array(Id).min(1).max(1_000), placeId: Id }),
    z.object({ cautions: z.array(MoveCaution) }),
  ),
} as const
