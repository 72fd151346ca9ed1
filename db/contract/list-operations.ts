import { z } from 'zod'
import { Id, Line } from './fields.ts'
import { reads, writes } from './operation.ts'

/** The largest list that is read, in characters of base64: about 8 MB. */
const LONGEST_LIST = 11_000_000

const Encoding = z.enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252', 'macintosh'])
const Delimiter = z.enum([',', ';', '\t', '|'])

const ColumnUse = z
  .string()
  .max(40)
  .describe('a field such as variety or amount, an MCPD code such as COLLSITE, or leave-out')

const List = {
  fileName: Line,
  content: z
    .base64('Send the file as base64.')
    .min(1, 'That file is empty.')
    .max(LONGEST_LIST, 'That file is larger than 8 MB. Cut it into parts and take in each by itself.')
    .describe('the file itself, as base64'),
  choices: z
    .strictObject({
      sheet: z.string().max(200).optional(),
      encoding: Encoding.optional(),
      delimiter: Delimiter.optional(),
      headingRow: z.int().min(-1).max(200).optional().describe('counted from 0; -1: there are no headings'),
      columns: z.array(ColumnUse).max(200).optional().describe('what each column holds, in order'),
    })
    .default({})
    .describe('what the file does not tell by itself, or tells wrongly'),
  answers: z
    .record(z.string().max(300), z.string().max(300))
    .default({})
    .describe('what was chosen for each question, by its id'),
}

const Fate = z.enum(['new', 'there', 'doubtful', 'refused', 'left-out'])
export type Fate = z.infer<typeof Fate>

const Question = z.object({
  id: z.string(),
  about: z.enum([
    'crop',
    'variety',
    'person',
    'place',
    'unit',
    'packets',
    'amount',
    'no-amount',
    'order',
    'same',
  ]),
  sentence: z.string(),
  rows: z.int().describe('how many rows wait for it'),
  firstRow: z.int(),
  choices: z
    .array(z.object({ value: z.string(), words: z.string() }))
    .describe('the likeliest first; of a crop also crop:<id> of any other'),
  answered: z.string().nullable(),
})
export type ListQuestion = z.infer<typeof Question>

const ListPreview = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('read'),
    understood: z.array(z.string()).describe('how the file was understood, sentence by sentence'),
    sheets: z.array(z.string()),
    sheet: z.string().nullable(),
    encoding: Encoding.nullable(),
    delimiter: Delimiter.nullable(),
    headingRow: z.int(),
    remembered: z.boolean().describe('whether the columns are as the keeper mapped such a list before'),
    columns: z.array(z.object({ heading: z.string(), use: ColumnUse, sample: z.array(z.string()) })),
    fields: z
      .array(z.object({ use: ColumnUse, words: z.string() }))
      .describe('what a column can be used for'),
    counts: z.record(Fate, z.int()),
    questions: z.array(Question).describe('the first of those that are open, then those answered'),
    openQuestions: z.int(),
    rows: z
      .array(
        z.object({
          row: z.int().describe('as a spreadsheet numbers it: the first line is 1'),
          fate: Fate,
          words: z.string(),
          because: z.string(),
        }),
      )
      .describe('the first of each fate'),
    findings: z
      .array(
        z.object({
          level: z.enum(['error', 'warning']),
          sentence: z.string(),
          times: z.int().describe('of how many rows it is true'),
          first: z.int().describe('the first of them'),
        }),
      )
      .describe(
        'what in a list of MCPD V.2.1 does not fit the descriptors, errors first; none of any other list',
      ),
  }),
  z.object({ kind: z.literal('unreadable'), because: z.string() }),
])
export type ListPreview = z.infer<typeof ListPreview>

export const listOperations = {
  'import.preview': reads(
    "Shows how somebody's list of seed (CSV or .xlsx) is understood and what becomes of each row, without writing anything.",
    z.strictObject(List),
    ListPreview,
  ),
  'import.list-refused': reads(
    'Gives the rows of a list that would not come in, as a file with the reason beside each.',
    z.strictObject(List),
    z.object({ fileName: z.string(), csv: z.string(), rows: z.int() }),
  ),
  'import.record': writes(
    "Takes the gifts of somebody's list in, all of them or none: an accession and a numbered lot for each.",
    {
      ...List,
      leaveOut: z.boolean().default(false).describe('that refused rows may be left out'),
    },
    { taken: z.int(), leftOut: z.int(), firstLotId: Id, firstNumber: z.string(), lastNumber: z.string() },
  ),
} as const
