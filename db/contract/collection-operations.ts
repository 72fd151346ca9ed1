import { z } from 'zod'
import { isIsoDate } from '../domain/dates/iso-date.ts'
import {
  APPEARANCES,
  CHECK_RETURNS,
  COLLECTION_KINDS,
  MASS_UNITS,
  PAPER_SIZES,
  THRESHOLDS_OF,
} from '../domain/shared/closed-sets.ts'
import { LANGUAGE_CODES } from '../messages/languages.ts'
import { ForecastsLeft } from './care-operations.ts'
import { Assurance, Day, Id, Line, LotName, MovementKind, PopulationGoal } from './fields.ts'
import { keeps, reads, writes } from './operation.ts'
import { says, Told } from './told.ts'

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
    .enum(THRESHOLDS_OF)
    .describe('what that is a part of: all seeds, or what was alive at the start of the lot'),
  grade: PopulationGoal.describe('what a regrowing is for; decides its plants'),
  sowingDay: z
    .string()
    .refine(
      (day) => day !== '02-29' && isIsoDate(`2024-${day}`),
      'Write the sowing day as 04-15, month and day.',
    )
    .describe('day of the year on which a season is sown, MM-DD'),
  language: z.enum(LANGUAGE_CODES).describe('what the app speaks and prints in'),
  locale: z
    .string()
    .regex(/^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, LANGUAGE_TAG)
    .refine(isLocale, LANGUAGE_TAG),
  massUnits: z.enum(MASS_UNITS).describe('what masses are written in: grams, or ounces and pounds'),
  paper: z.enum(PAPER_SIZES),
  appearance: z.enum(APPEARANCES),
  visitLimit: z
    .int()
    .min(1)
    .max(100)
    .nullable()
    .describe('packets for one visit before a reason is wanted; null: no limit'),
  checkReturns: z
    .enum(CHECK_RETURNS)
    .describe('which returns wait to be checked: those that may have changed, or every one'),
  dueDates: z
    .boolean()
    .describe('whether a day is named by which seed is to come back, and told when it passed'),
  maskedNames: z
    .array(Line)
    .max(500)
    .describe('first names and surnames to leave out of what goes out; kept without case and accents'),
  whomToCall: z
    .string()
    .trim()
    .max(2_000)
    .describe('names and numbers for the sheet for a fire, a line each'),
})
export type Settings = z.infer<typeof Settings>

const EntryLine = z.object({
  ...LotName,
  kind: MovementKind,
  count: z.int(),
  massMg: z.int(),
})

const BackupLine = z.object({
  file: z.string(),
  where: z.enum(['own-folder', 'second-folder']),
  why: Told.describe('what it was made for, in words'),
  at: z.string().describe('when it was made'),
  bytes: z.int(),
})
export type BackupLine = z.infer<typeof BackupLine>

const Said = z.object({ count: z.int(), latest: z.array(z.object({ at: z.string(), said: Told })) })

export const BackupComparison = z.object({
  file: z.string(),
  sameLibrary: z.boolean().describe('whether it is an earlier state of the open collection, not another one'),
  libraryName: z.string(),
  lastWrittenAt: z.string(),
  counts: z.array(z.object({ what: Told, open: z.int(), backup: z.int() })),
  onlyOpen: Said.describe('entries of the open collection that the backup does not have'),
  onlyBackup: Said.describe('entries of the backup that the open collection does not have'),
  lots: z
    .array(z.object({ number: z.string(), open: Told, backup: Told }))
    .describe('lots that hold something else, fifty at most'),
  lotsDiffering: z.int(),
})
export type BackupComparison = z.infer<typeof BackupComparison>

const DraftId = z.string().regex(/^[A-Za-z0-9_-]{8,64}$/, says('fits.draft-name'))

/** The one list of the screens that keep drafts. */
const DraftKind = z.enum([
  'take-in',
  'hand-out',
  'return',
  'stocktake',
  'paper-sheet',
  'round',
  'bench',
  'season',
])

export const collectionOperations = {
  'collection.get': reads(
    'Tells which collection is open, its settings and how much it holds.',
    z.strictObject({}),
    z.object({
      kind: z.enum(COLLECTION_KINDS),
      file: z.string(),
      today: Day,
      settings: Settings,
      patternExample: z.string(),
      accessions: z.int(),
      lots: z.int(),
      people: z.int(),
      movements: z.int(),
      warnings: z.array(Told).describe('such as a file kept in a synced folder'),
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
      findings: z.array(z.object({ check: z.string(), sentence: Told })),
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
      secondTrouble: Told.nullable().describe('why it could not be copied to the second folder'),
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
          said: Told,
          undoable: z.boolean(),
          takenBack: z.boolean(),
          overridden: Told.describe('cautions that the hand-out passed by, and why'),
          people: z.array(z.string()).describe('whom its movements are with, by name as of now'),
          by: z.string().describe('who did it, by name as of now; empty: not said'),
          station: z.string().describe('the device it came from; empty: the keeper’s own'),
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
  'backup.list': reads(
    'Lists the backups of the collection, newest first, and where and how much is kept. Answers for a damaged file too.',
    z.strictObject({}),
    z.object({
      folder: z.string(),
      secondFolder: z.string().describe('empty: nowhere else'),
      secondThere: z.boolean(),
      limitMb: z.int().nullable().describe('null where the collection cannot be opened'),
      backups: z.array(BackupLine),
      lastGood: z
        .string()
        .nullable()
        .describe('for a collection that cannot be opened: the newest whole backup'),
      trouble: Told.nullable().describe('why the last automatic backup failed'),
      underWay: z
        .object({
          doing: z.enum(['copying', 'checking']),
          copied: z.number().min(0).max(1).describe('how much of the file is copied'),
        })
        .nullable()
        .describe('how far the backup is that is being made'),
    }),
  ),
  'backup.compare': reads(
    'Opens a backup, checks all of it, and says what differs from the open collection.',
    z.strictObject({ file: z.string().trim().min(1).max(1_000) }),
    BackupComparison,
  ),
  'backup.change-rule': writes(
    'Changes the second folder that backups are copied to, and how much they may take in each folder.',
    {
      secondFolder: z.string().trim().max(1_000).optional().describe('empty: nowhere else'),
      limitMb: z.int().min(10).max(1_000_000).optional().describe('megabytes'),
    },
    {},
  ),
  'backup.restore': writes(
    'Restores a backup into a new file and opens that; the file that was open stays as it is.',
    { file: z.string().trim().min(1).max(1_000) },
    { file: z.string().describe('the new file') },
  ),
  'draft.save': keeps(
    'Keeps what is typed on an unfinished screen, so that a crash loses nothing; an empty text drops it.',
    z.strictObject({ draftId: DraftId, kind: DraftKind, text: z.string().max(500_000) }),
    z.object({ keptAt: z.string() }),
  ),
  'draft.list': reads(
    'Lists the unfinished screens of a kind, newest first.',
    z.strictObject({ kind: DraftKind }),
    z.object({
      drafts: z.array(
        z.object({
          draftId: z.string(),
          text: z.string(),
          keptAt: z.string(),
          earlierRun: z
            .boolean()
            .describe('kept before the collection was opened this time: nobody else is at it'),
        }),
      ),
    }),
  ),
}
