import { z } from 'zod'
import { isIsoDate } from '../domain/dates/iso-date.ts'
import { Assurance, Day, Id, Line, MovementKind, PopulationGoal } from './fields.ts'
import { ForecastsLeft } from './forecast-operations.ts'
import { reads, writes } from './operation.ts'

const LANGUAGE_TAG = 'Use a language tag such as en-GB.'

/** Whether numbers and dates can be written by a language tag at all: some that look well are none. */
function isLocale(tag: string): boolean {
  try {
    return Intl.getCanonicalLocales(tag).length === 1
  } catch {
    return false
  }
}

export const Settings = z.object({
  libraryName: Line,
  accessionPattern: z.string().describe('such as HL{yy}-{####}; one running number at the end'),
  regrowingsKept: z.int().min(1).max(20),
  emergence: z.number().min(0.05).max(1).describe('part of living seeds sown that become plants'),
  assurance: Assurance,
  viabilityThreshold: z.number().min(0.05).max(1).describe('part that must sprout'),
  viabilityThresholdOf: z
    .enum(['all-seeds', 'the-start'])
    .describe('what that is a part of: all seeds, or what was alive at the start of the lot'),
  grade: PopulationGoal.describe('what a regrowing is for; decides its plants'),
  sowingDay: z
    .string()
    .refine(
      (day) => day !== '02-29' && isIsoDate(`2024-${day}`),
      'Write the sowing day as 04-15, month and day.',
    )
    .describe('day of the year on which a season is sown, MM-DD'),
  locale: z
    .string()
    .regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, LANGUAGE_TAG)
    .refine(isLocale, LANGUAGE_TAG),
  massUnits: z.enum(['metric', 'ounces']).describe('what masses are written in: grams, or ounces and pounds'),
  paper: z.enum(['a4', 'letter']),
  appearance: z.enum(['system', 'light', 'dark']),
  visitLimit: z
    .int()
    .min(1)
    .max(100)
    .nullable()
    .describe('packets for one visit before a reason is wanted; null: no limit'),
  maskedNames: z
    .array(Line)
    .max(500)
    .describe('first names and surnames to leave out of what goes out; kept without case and accents'),
})
export type Settings = z.infer<typeof Settings>

const EntryLine = z.object({
  lotId: Id,
  lotNumber: z.string(),
  kind: MovementKind,
  count: z.int(),
  massMg: z.int(),
})

export const collectionOperations = {
  'collection.get': reads(
    'Tells which collection is open, its settings and how much it holds.',
    z.strictObject({}),
    z.object({
      kind: z.enum(['demo', 'own']),
      file: z.string(),
      today: Day,
      settings: Settings,
      patternExample: z.string(),
      accessions: z.int(),
      lots: z.int(),
      people: z.int(),
      movements: z.int(),
      warnings: z.array(z.string()).describe('such as a file kept in a synced folder'),
    }),
  ),
  'collection.get-revision': reads(
    'Tells the number of the latest entry and of forecasts to come, so that a window knows when to look again.',
    z.strictObject({}),
    z.object({ revision: z.int(), forecasts: ForecastsLeft }),
  ),
  'collection.create': writes(
    'Starts an empty collection of your own and opens it; the one open now is closed and kept.',
    { libraryName: Line, accessionPattern: z.string().optional() },
    { file: z.string() },
  ),
  'collection.open-demo': writes(
    'Opens the demonstration collection of an invented town, making it first where it is missing.',
    {},
    { file: z.string() },
  ),
  'settings.change': writes(
    'Changes settings of the open collection; what is left out stays.',
    { settings: Settings.partial() },
    { settings: Settings, patternExample: z.string() },
  ),
  'collection.check': reads(
    'Checks that the book is right: balances equal their sums, numbers agree, nothing is missing.',
    z.strictObject({}),
    z.object({
      clean: z.boolean(),
      findings: z.array(z.object({ check: z.string(), sentence: z.string() })),
      checked: z.object({ lots: z.int(), movements: z.int(), accessions: z.int() }),
    }),
  ),
  'backup.create': reads(
    'Copies the open collection to a checked backup file beside it and in the second folder, and says where.',
    z.strictObject({
      deleteOlder: z
        .boolean()
        .default(false)
        .describe(
          'deletes every backup made before, once the new one is whole: they hold who was erased since',
        ),
    }),
    z.object({
      file: z.string(),
      bytes: z.int(),
      second: z.string().nullable(),
      secondTrouble: z.string().nullable().describe('why it could not be copied to the second folder'),
      deleted: z.int().describe('how many older ones were deleted'),
    }),
  ),
  'entry.list': reads(
    'Lists what was written in the book, newest first.',
    z.strictObject({ before: Id.optional(), limit: z.int().min(1).max(200).default(50) }),
    z.object({
      entries: z.array(
        z.object({
          entryId: Id,
          operation: z.string(),
          recordedAt: z.string(),
          said: z.string(),
          undoable: z.boolean(),
          takenBack: z.boolean(),
          overridden: z.string().describe('cautions that the hand-out passed by, and why'),
          people: z.array(z.string()).describe('whom its movements are with, by name as of now'),
          lines: z.array(EntryLine),
        }),
      ),
    }),
  ),
  'entry.undo': writes(
    'Takes an entry back by writing the exact opposite of each of its movements.',
    { entryId: Id, reason: Line.optional() },
    { lines: z.array(EntryLine) },
  ),
} as const
