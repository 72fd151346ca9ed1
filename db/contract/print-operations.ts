import { z } from 'zod'
import { Day, Id, Line } from './fields.ts'
import { reads, writes } from './operation.ts'
import { LabelSays, LabelSheet } from './paper-operations.ts'

/** What kind of paper an item of the print tray needs. */
export const PrintKind = z.enum(['label', 'letter', 'slip'])
export type PrintKind = z.infer<typeof PrintKind>

const Copies = z.int().min(1, 'Print at least one.').max(200, 'Print at most 200 at a time.')
const Contents = z
  .string()
  .trim()
  .max(60, 'Keep it under 60 characters.')
  .describe("what the packet says: '25 seeds'; empty: what the lot holds when it is printed")

const OffsetMm = z
  .tuple([z.number().min(-10).max(10), z.number().min(-10).max(10)])
  .describe('how far the print is moved right and down, mm')

const StartAt = z.int().min(1).max(200)

const TrayItem = z.object({
  itemId: Id,
  title: z.string(),
  detail: z.string(),
  lotId: Id.nullable(),
  copies: z.int(),
  contents: z.string(),
  because: z.string().describe('the entry that put it here, in words'),
  heldBack: z.string().nullable().describe('why it cannot be printed'),
})
export type TrayItem = z.infer<typeof TrayItem>

/** Which items, and how the labels among them lie on their sheet. */
const WhatToPrint = {
  kind: PrintKind,
  itemIds: z.array(Id).min(1, 'Choose at least one thing to print.').max(500),
  sheet: LabelSheet.optional().describe('for labels'),
  startAt: StartAt.default(1),
  offsetMm: OffsetMm.default([0, 0]),
  says: LabelSays.default('what-fits'),
  cropMarks: z.boolean().default(false).describe('marks outside the labels where a blade is set'),
  printer: z
    .string()
    .trim()
    .max(60, 'Keep it under 60 characters.')
    .default('')
    .describe('whose offset it is'),
}

const LetterWords = z.string().trim().max(10_000, 'Keep the letter under 10,000 characters.')

const Made = {
  pdf: z.string().describe('the PDF, base64'),
  fileName: z.string(),
  pages: z.int(),
  warnings: z.array(z.string()),
}

export const printOperations = {
  'tray.list': reads(
    'Lists everything that waits to be printed, by kind of paper, and who is left out of the letters.',
    z.strictObject({}),
    z.object({
      groups: z.array(z.object({ kind: PrintKind, items: z.array(TrayItem) })),
      sheets: z
        .array(z.object({ sheet: LabelSheet, startAt: z.int() }))
        .describe('where each sheet that was printed on goes on, latest first'),
      printers: z
        .array(z.object({ name: z.string(), offsetMm: OffsetMm }))
        .describe('how far each printer’s print was moved last, latest first'),
      lettersSince: Day.describe('when letters were printed last, or the first day of the year'),
      leftOut: z.array(z.object({ personId: Id, name: z.string(), sentence: z.string() })),
    }),
  ),
  'tray.add': writes(
    'Puts labels of lots, a thank-you letter for a gift or a slip for a visit into the print tray.',
    {
      items: z
        .array(
          z.union([
            z.strictObject({
              kind: z.literal('label'),
              lotId: Id,
              copies: Copies.default(1),
              contents: Contents.default(''),
            }),
            z.strictObject({ kind: z.literal('letter'), accessionId: Id }),
            z.strictObject({ kind: z.literal('slip'), withdrawalId: Id }),
          ]),
        )
        .min(1)
        .max(500),
    },
    { itemIds: z.array(Id) },
  ),
  'tray.add-letters': writes(
    'Puts thank-you letters for all gifts of a time into the tray for which none was printed or waits.',
    { from: Day, until: Day },
    { itemIds: z.array(Id), letters: z.int().describe('donors who are written to') },
  ),
  'tray.change': writes(
    'Changes how many labels of a waiting item are printed, and what they say the packet holds.',
    { itemId: Id, copies: Copies, contents: Contents },
    { itemId: Id.describe('the item as it waits now') },
  ),
  'tray.remove': writes(
    'Takes waiting items out of the print tray.',
    { itemIds: z.array(Id).min(1).max(500) },
    {},
  ),
  'tray.render': reads(
    'Makes the PDF of some items of one kind, waiting or printed before, and marks nothing.',
    z.strictObject(WhatToPrint),
    z.object(Made),
  ),
  'tray.mark-printed': writes(
    'Notes that items came out of the printer well; taken back, they wait again.',
    WhatToPrint,
    { batchId: Id },
  ),
  'print.list': reads(
    'Lists what was printed, latest first.',
    z.strictObject({ before: Id.optional(), limit: z.int().min(1).max(100).default(30) }),
    z.object({
      batches: z.array(
        z.object({
          batchId: Id,
          kind: PrintKind,
          printedAt: z.string(),
          sheet: LabelSheet.nullable(),
          words: z.string(),
          items: z.array(TrayItem),
        }),
      ),
    }),
  ),
  'print.repeat': writes(
    'Puts what was printed before into the tray once more.',
    { batchId: Id },
    { itemIds: z.array(Id) },
  ),
  'letter.get': reads(
    "Shows the library's thank-you letter, who signs it, and the fields that may stand in it.",
    z.strictObject({}),
    z.object({
      words: z.string(),
      keeper: z.string(),
      shipped: z.string().describe('the words that the app brings along'),
      fields: z.array(z.object({ field: z.string(), meaning: z.string() })),
    }),
  ),
  'letter.change': writes(
    "Changes the library's thank-you letter or who signs it; empty words go back to those shipped.",
    { words: LetterWords, keeper: Line.or(z.literal('')) },
    {},
  ),
  'letter.render': reads(
    'Makes the letter in words not yet kept, for a real donor where one may be written to.',
    z.strictObject({ words: LetterWords, keeper: Line.or(z.literal('')) }),
    z.object({ ...Made, to: z.string().describe('whose letter it is; empty: an invented donor') }),
  ),
} as const
