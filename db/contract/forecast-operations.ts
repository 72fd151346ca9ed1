import { z } from 'zod'
import { Day, Id } from './fields.ts'
import { keeps, reads } from './operation.ts'

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
  aliveWords: z.string(),
  threshold: z.number(),
  thresholdWords: z.string(),
  line: z.number().describe('the threshold as a part of all seeds'),
  crossing: z
    .object({ early: Day.nullable(), middle: Day.nullable(), late: Day.nullable() })
    .describe('null: not within 200 years'),
  crossingWords: z.string(),
  chanceBelow: z.number(),
  curve: z.array(Band.extend({ on: Day })),
  tests: z.array(
    Band.extend({ on: Day, tested: z.int(), sprouted: z.int(), setAside: z.boolean() }).describe(
      'what sprouted, with its 95 % interval',
    ),
  ),
  howSure: z.array(z.string()),
  basis: z.object({ words: z.string(), source: z.string(), confidence: z.string(), note: z.string() }),
  places: z
    .array(
      z.object({
        placeId: Id.nullable().describe('null: where it lies'),
        place: z.string(),
        years: Years.nullable().describe('to the threshold; null: not to be told'),
        words: z.string(),
        caution: z.string(),
      }),
    )
    .describe('what it would be to move the lot'),
})
export type LotForecast = z.infer<typeof LotForecast>

export const forecastOperations = {
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
    z.discriminatedUnion('kind', [
      LotForecast,
      z.object({ kind: z.literal('refused'), because: z.string() }),
    ]),
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
          place: z.string(),
          half: Years.nullable().describe('until half of those not below yet are so; null: all are below'),
          words: z.string(),
          soon: z.int().describe('lots more that are below within five years'),
          notTold: z.int().describe('lots of which nothing can be said there'),
          caution: z.string(),
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
      words: z.string(),
    }),
  ),
  'forecast.get-progress': reads(
    'Tells how many forecasts are still to be worked out, of how many lots.',
    z.strictObject({}),
    ForecastsLeft,
  ),
} as const
