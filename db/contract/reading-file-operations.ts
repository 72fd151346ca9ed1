import { z } from 'zod'
import { Id, Line } from './fields.ts'
import { reads, writes } from './operation.ts'
import { TemperatureUnit } from './storage-operations.ts'

/** The longest file that is read, in characters: a few hundred thousand readings. */
export const LONGEST_FILE = 10_000_000

const Column = z.int().min(0).max(500).describe('counted from 0')

const File = {
  placeId: Id,
  fileName: Line,
  text: z
    .string()
    .min(1, 'That file is empty.')
    .max(LONGEST_FILE, 'That file is too long. Cut it into years and read each by itself.'),
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
  because: z.string(),
})

const Columns = z
  .array(z.object({ column: Column, name: z.string() }))
  .describe('the columns that hold numbers, to choose among')

const ReadFile = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('read'),
    understood: z.array(z.string()).describe('how the file was understood, sentence by sentence'),
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
    sample: z.array(z.object({ at: z.string(), words: z.string() })),
  }),
  z.object({
    kind: z.literal('ask'),
    about: z.enum(['order', 'unit', 'columns']),
    because: z.string(),
    columns: Columns,
  }),
  z.object({ kind: z.literal('unreadable'), because: z.string() }),
])
export type ReadFile = z.infer<typeof ReadFile>

export const readingFileOperations = {
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
} as const
