import { z } from 'zod'
import { BREAK_CLASSES } from '../domain/moisture/break-check.ts'
import { USUAL_DRYING_GOAL } from '../domain/moisture/drying.ts'
import { INSPECTIONS } from '../domain/rounds/inspection.ts'
import { CONTAINER_KINDS, INSPECTION_OUTCOMES, MOISTURE_METHODS } from '../domain/shared/closed-sets.ts'
import { Day, Id, LotLine, LotName, PrintedPdf, pageOf, Story } from './fields.ts'
import { keeps, reads, writes } from './operation.ts'
import { ReadOff, TemperatureUnit } from './storage-operations.ts'
import { says, Told } from './told.ts'

const Looked = z.enum(INSPECTIONS)

const RoundLot = z.object({
  ...LotLine,
  place: z.string(),
  quarantined: z.boolean(),
})

const RoundStop = z.object({
  placeId: Id,
  path: z.string(),
  everyDays: z.int(),
  lastOn: z.string().nullable().describe('null: never walked to'),
  due: z.object({ on: z.string(), when: z.enum(['late', 'today', 'later']) }),
  looks: z.array(z.object({ look: Looked, name: Told, words: Told })),
  lots: z
    .array(RoundLot)
    .describe('with seed, there and inside it, but for places with a rhythm of their own'),
})
export type RoundStop = z.infer<typeof RoundStop>

const RoundFinding = z.object({
  placeId: Id,
  path: z.string(),
  look: Looked,
  name: Told,
  note: Told,
  lots: z.array(z.object(LotName)),
})

const Grams = z.number().positive('Write a mass in grams, above 0.').max(1_000_000)
const Percent = z.number().min(0).max(100)
const Goal = z.number().min(2, says('fits.too-dry')).max(30, says('fits.too-moist'))

export const ContainerKind = z.enum(CONTAINER_KINDS)

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
  words: Told,
  advice: z.array(Told).describe('what follows for storing and freezing'),
})
export type Moisture = z.infer<typeof Moisture>

export const MoveCaution = z.object({ ...LotName, sentence: Told })

export const LotStorage = z.object({
  lotId: Id,
  container: z
    .object({
      kind: ContainerKind,
      airtight: z.boolean(),
      pestProof: z.boolean(),
      since: z.string(),
      note: z.string(),
      words: Told,
    })
    .nullable(),
  moistures: z.array(
    Moisture.omit({ advice: true }).extend({
      on: z.string(),
      method: z.enum(MOISTURE_METHODS),
      note: z.string(),
    }),
  ),
  cautions: z.array(Told),
  stays: z.array(
    z.object({
      placeId: Id,
      place: z.string(),
      from: z.string(),
      until: z.string().nullable(),
      words: Told.describe('how warm and damp it was there; empty where nobody measured'),
    }),
  ),
  findings: z
    .array(z.object({ on: z.string(), place: z.string(), words: Told }))
    .describe('what rounds found of it, the latest first'),
})
export type LotStorage = z.infer<typeof LotStorage>

export const ForecastsLeft = z.object({
  left: z.int().describe('forecasts still to be worked out'),
  lots: z.int().describe('of so many lots'),
  held: z.boolean().describe('whether somebody stopped working them out'),
})

const Band = z.object({ low: z.number(), middle: z.number(), high: z.number() })

const Years = z.object({ low: z.number(), middle: z.number(), high: z.number() })

export const LotForecast = z.object({
  kind: z.literal('forecast'),
  on: Day,
  start: Day.describe('from which the lot is taken to age'),
  alive: Band.describe('parts of one; a 90 % band'),
  aliveWords: Told,
  threshold: z.number(),
  thresholdWords: Told,
  line: z.number().describe('the threshold as a part of all seeds'),
  crossing: z
    .object({ early: Day.nullable(), middle: Day.nullable(), late: Day.nullable() })
    .describe('null: not within 200 years'),
  crossingWords: Told,
  chanceBelow: z.number(),
  curve: z.array(Band.extend({ on: Day })),
  tests: z.array(
    Band.extend({ on: Day, tested: z.int(), sprouted: z.int(), setAside: z.boolean() }).describe(
      'what sprouted, with its 95 % interval',
    ),
  ),
  howSure: z.array(Told),
  basis: z.object({ words: Told, source: Told, confidence: Told, note: Told }),
  places: z
    .array(
      z.object({
        placeId: Id.nullable().describe('null: where it lies'),
        place: Told,
        years: Years.nullable().describe('to the threshold; null: not to be told'),
        words: Told,
        caution: Told,
      }),
    )
    .describe('what it would be to move the lot'),
})
export type LotForecast = z.infer<typeof LotForecast>

export const careOperations = {
  'round.list-due': reads(
    'Lists the places that a round goes to, what to look at in each, and when it is due.',
    z.strictObject({}),
    z.object({
      places: z.array(RoundStop).describe('the one due first comes first'),
      toWalk: z.int().describe('late or due today'),
      cautions: z.array(Told),
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
                  outcome: z.enum(INSPECTION_OUTCOMES),
                  note: z.string().trim().max(2_000).default('').describe('what was found'),
                  lotIds: z.array(Id).max(1_000).default([]).describe('the lots concerned; none: the place'),
                  quarantine: z.boolean().default(false).describe('those lots go into quarantine'),
                }),
              )
              .default([]),
            reading: ReadOff.nullable().default(null).describe('what the instruments there say'),
          }),
        )
        .min(1, says('fits.one-place'))
        .max(500),
    },
    { found: z.int(), quarantined: z.int() },
  ),
  'round.list': reads(
    'Lists the rounds that were walked, the latest first, with what they found.',
    z.strictObject({
      placeId: Id.optional().describe('only rounds that went there'),
      ...pageOf(200, 20),
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
    z.object(PrintedPdf),
  ),
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
      words: Told,
      assumptions: z.array(Told),
      cautions: z.array(Told),
    }),
  ),
  'lot.preview-move': reads(
    'Says what speaks against moving lots to a place: seed too moist to freeze above all.',
    z.strictObject({ lotIds: z.array(Id).min(1).max(1_000), placeId: Id }),
    z.object({ cautions: z.array(MoveCaution) }),
  ),
  'forecast.refresh': keeps(
    'Works out some of the forecasts that no longer hold, unless that is stopped, and tells how many are left.',
    z.strictObject({ limit: z.int().min(1).max(5_000).default(200) }),
    ForecastsLeft.extend({ computed: z.int() }),
  ),
  'forecast.pause': keeps(
    'Stops working out forecasts until it is let go on, or until the collection is opened again.',
    z.strictObject({ held: z.boolean().describe('true: stop; false: go on') }),
    ForecastsLeft,
  ),
  'forecast.get': reads(
    'Tells how alive a lot is thought to be, until when, how sure that is, and what moving it would bring.',
    z.strictObject({ lotId: Id }),
    z.discriminatedUnion('kind', [LotForecast, z.object({ kind: z.literal('refused'), because: Told })]),
  ),
  'place.preview-moves': reads(
    'Tells how long the lots of a place keep above their thresholds there, and would in each other place.',
    z.strictObject({ placeId: Id }),
    z.object({
      lots: z.int().describe('lots there and inside it that can be told of'),
      notTold: z.int().describe('lots there of which nothing can be said'),
      already: z.int().describe('lots that are more likely below their threshold than not today'),
      places: z.array(
        z.object({
          placeId: Id.nullable().describe('null: where they lie'),
          place: Told,
          half: Years.nullable().describe('until half of those not below yet are so; null: all are below'),
          words: Told,
          soon: z.int().describe('lots more that are below within five years'),
          notTold: z.int().describe('lots of which nothing can be said there'),
          caution: Told,
        }),
      ),
    }),
  ),
  'place.get-excursion-cost': reads(
    'Tells what some days cost the lots that lay in a place then, beside what its usual days cost.',
    z.strictObject({ placeId: Id, from: Day, until: Day.describe('the last of the days') }),
    z.object({
      lots: z.int().describe('lots that lie there now, lay there then and can be told of'),
      least: z.number().describe('points of the percentage alive today'),
      middle: z.number(),
      most: z.number(),
      words: Told,
    }),
  ),
  'forecast.get-progress': reads(
    'Tells how many forecasts are still to be worked out, of how many lots.',
    z.strictObject({}),
    ForecastsLeft,
  ),
}
