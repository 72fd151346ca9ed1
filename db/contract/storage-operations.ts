import { z } from 'zod'
import { PLACE_AIMS } from '../domain/climate/limits.ts'
import { PLACE_STATES } from '../domain/climate/place-state.ts'
import { PLACE_KINDS } from '../domain/shared/closed-sets.ts'
import { Day, Id, Line, LotLine, Story } from './fields.ts'
import { reads, writes } from './operation.ts'
import { says, Told } from './told.ts'

export const PlaceLine = z.object({
  placeId: Id,
  parentId: Id.nullable(),
  name: z.string(),
  path: z.string().describe('all names from the room down'),
  kind: z.enum(PLACE_KINDS),
  lots: z.int(),
})

export const Aim = z.enum(PLACE_AIMS)
export const TemperatureUnit = z.enum(['C', 'F'])
const Percent = z.number().min(0).max(100)
const Celsius = z.number().describe('degrees C')
/** As read off an instrument, in either unit. */
const Temperature = z.number().min(-148, says('fits.too-cold')).max(212, says('fits.too-hot'))

/** What was read off the instruments of a place, and when. */
export const ReadOff = z.strictObject({
  time: z
    .string()
    .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'Write the time as 08:30.')
    .describe('on the wall clock there, HH:MM'),
  temperature: Temperature,
  unit: TemperatureUnit.default('C'),
  humidity: Percent.nullable().default(null).describe('relative humidity, percent'),
})
export type ReadOff = z.infer<typeof ReadOff>

export const StoredPlace = PlaceLine.extend({
  lots: z.int().describe('lots with seed there and inside it'),
  aim: Aim.describe('its own, or that of the nearest place around it that has one'),
  readingsFrom: z
    .object({ placeId: Id, path: z.string() })
    .nullable()
    .describe(
      'the place whose readings hold here: itself or the nearest around it, nothing outside a fridge or freezer; null: nobody measured',
    ),
  latest: z.string().nullable().describe('the minute of the latest reading'),
  state: z.enum(PLACE_STATES),
  stateWords: Told,
})
export type StoredPlace = z.infer<typeof StoredPlace>

const ClimateDay = z.object({
  on: z.string().describe('a day, or a month where the time is long'),
  low: Celsius,
  mean: Celsius,
  high: Celsius,
  lowHumidity: Percent.nullable(),
  meanHumidity: Percent.nullable(),
  highHumidity: Percent.nullable(),
})
export type ClimateDay = z.infer<typeof ClimateDay>

/** What the readings of some time come to. */
const ClimateSum = z.object({
  readings: z.int(),
  from: z.string(),
  until: z.string().describe('the minute of the last reading'),
  lowest: Celsius,
  mean: Celsius,
  highest: Celsius,
  meanHumidity: Percent.nullable(),
  highestHumidity: Percent.nullable(),
  meanSum: z.number().nullable().describe('mean of degrees F plus percent of relative humidity'),
  shareOutside: z
    .number()
    .nullable()
    .describe('part of the measured time beyond the limits; null: none to keep to'),
})
export type ClimateSum = z.infer<typeof ClimateSum>

const Spell = z.object({
  from: z.string(),
  until: z.string(),
  hours: z.number(),
  highest: Celsius,
  highestHumidity: Percent.nullable(),
})

export const PlaceClimate = z.object({
  place: StoredPlace,
  terms: z
    .object({
      aim: Aim,
      highestCelsius: Celsius.nullable(),
      highestHumidity: Percent.nullable(),
      roundDays: z.int().nullable(),
    })
    .nullable()
    .describe('what the keeper said of this very place; null: nothing yet'),
  suggestedAim: Aim.describe('what such a place is usually meant for'),
  limits: z.object({
    highestCelsius: Celsius.nullable(),
    highestHumidity: Percent.nullable(),
    highestSum: z.number().nullable(),
    words: Told,
  }),
  sum: ClimateSum.nullable().describe('null where nothing was read in that time'),
  words: z.array(Told).describe('what the readings say, sentence by sentence'),
  trace: z.array(ClimateDay),
  traceBy: z.enum(['day', 'month']),
  spells: z.array(Spell).describe('the longest times beyond the limits'),
  thaws: z.object({ peaks: z.int(), everyHours: z.number(), rise: z.number(), words: Told }).nullable(),
  lots: z.array(
    z.object({
      ...LotLine,
      place: z.string(),
      caution: Told.describe('why it should not lie there as it is; may be empty'),
    }),
  ),
  batches: z.array(
    z.object({
      entryId: Id,
      fileName: z.string().nullable().describe('null: typed'),
      readings: z.int(),
      leftOut: z.int(),
      note: z.string(),
      first: z.string(),
      last: z.string(),
    }),
  ),
})
export type PlaceClimate = z.infer<typeof PlaceClimate>

const Season = z.object({
  months: Told.describe("'Dec to Feb'"),
  sum: ClimateSum,
})

/** The longest file that is read, in characters: a few hundred thousand readings. */
export const LONGEST_FILE = 10_000_000

const Column = z.int().min(0).max(500).describe('counted from 0')

const File = {
  placeId: Id,
  fileName: Line,
  text: z.string().min(1, says('fits.file-empty')).max(LONGEST_FILE, says('fits.readings-too-long')),
  choices: z
    .strictObject({
      unit: TemperatureUnit.optional(),
      order: z.enum(['day-first', 'month-first']).optional(),
      temperature: Column.optional(),
      humidity: Column.nullable().optional().describe('null: leave humidity out'),
    })
    .default({})
    .describe('what the file does not tell by itself, or tells wrongly'),
}

const RefusedRow = z.object({
  row: z.int().describe('as a spreadsheet numbers it: the first line is 1'),
  text: z.string(),
  because: Told,
})

const Columns = z
  .array(z.object({ column: Column, name: Told }))
  .describe('the columns that hold numbers, to choose among')

const ReadFile = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('read'),
    understood: z.array(Told).describe('how the file was understood, sentence by sentence'),
    columns: Columns,
    temperature: Column,
    humidity: Column.nullable(),
    unit: TemperatureUnit,
    order: z.enum(['day-first', 'month-first']),
    readings: z.int().describe('how many would come in'),
    from: z.string().nullable(),
    until: z.string().nullable(),
    already: z.int().describe('readings of a minute that is in the book already; they are left out'),
    refused: z.array(RefusedRow).describe('the first of them'),
    refusedRows: z.int(),
    sample: z.array(z.object({ at: z.string(), words: Told })),
  }),
  z.object({
    kind: z.literal('ask'),
    about: z.enum(['order', 'unit', 'columns']),
    because: Told,
    columns: Columns,
  }),
  z.object({ kind: z.literal('unreadable'), because: Told }),
])
export type ReadFile = z.infer<typeof ReadFile>

export const storageOperations = {
  'place.list': reads(
    'Lists the storage places as a tree.',
    z.strictObject({}),
    z.object({ places: z.array(PlaceLine) }),
  ),
  'place.create': writes(
    'Adds a storage place, inside another or by itself.',
    { parentId: Id.nullable().default(null), name: Line, kind: PlaceLine.shape.kind },
    { placeId: Id },
  ),
  'place.preview-kind': reads(
    'Says what calling a place another kind of place does to the climate that its seed is taken to lie in.',
    z.strictObject({ placeId: Id, kind: PlaceLine.shape.kind }),
    z.object({ words: z.array(Told) }),
  ),
  'place.change-kind': writes(
    'Says that a place is another kind of place, such as a fridge and no cupboard.',
    { placeId: Id, kind: PlaceLine.shape.kind },
    { words: z.array(Told) },
  ),
  'storage.list': reads(
    'Lists the storage places with how each stands by its latest readings.',
    z.strictObject({}),
    z.object({ places: z.array(StoredPlace) }),
  ),
  'storage.get': reads(
    'Shows the climate of a place against its limits, and the lots that lie there.',
    z.strictObject({
      placeId: Id,
      days: z
        .int()
        .min(1)
        .max(36_500)
        .default(90)
        .describe('how much of the time up to the latest reading is looked at'),
    }),
    PlaceClimate,
  ),
  'storage.compare': reads(
    'Compares places side by side over the seasons that were measured in each.',
    z.strictObject({
      placeIds: z.array(Id).min(2, says('fits.two-places')).max(6, says('fits.six-places')),
      aim: Aim.default('short-term').describe('what the place is wanted for'),
    }),
    z.object({
      places: z.array(
        z.object({
          placeId: Id,
          path: z.string(),
          sum: ClimateSum.nullable(),
          seasons: z.array(Season),
          words: Told,
        }),
      ),
      words: Told.describe('which of them keeps seed best so far, and how sure that is'),
    }),
  ),
  'place.change-terms': writes(
    'Says what a place is meant for, its own limits, and how often a round goes there.',
    {
      placeId: Id,
      aim: Aim,
      highestCelsius: z.number().min(-100).max(100).nullable().default(null),
      highestHumidity: Percent.nullable().default(null),
      roundDays: z.int().min(1).max(1_100).nullable().default(null),
    },
    { place: StoredPlace },
  ),
  'reading.record': writes(
    'Writes down a reading of a place: temperature, and humidity where it was read.',
    {
      placeId: Id,
      on: Day,
      ...ReadOff.shape,
      note: Story.default(''),
    },
    { place: StoredPlace, warnings: z.array(Told) },
  ),
  'reading.preview-file': reads(
    "Shows how a data logger's file is understood and which rows are refused, without writing anything.",
    z.strictObject(File),
    ReadFile,
  ),
  'reading.import-file': writes(
    "Takes the readings of a data logger's file in for a place, all of them or none.",
    {
      ...File,
      leaveOut: z.boolean().default(false).describe('that rows which cannot be read may be left out'),
    },
    { readings: z.int(), leftOut: z.int() },
  ),
}
