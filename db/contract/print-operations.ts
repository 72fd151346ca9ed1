import { z } from 'zod'
import { PRINT_KINDS } from '../domain/shared/closed-sets.ts'
import { Day, Id, Line, PrintedPdf } from './fields.ts'
import { reads, writes } from './operation.ts'
import { says, Told } from './told.ts'

/** A sheet that the app brings along: labels, packets to fold, and the faces of envelopes. */
export const ShippedSheet = z.enum([
  'a4-21',
  'a4-24',
  'a4-14',
  'a4-8',
  'a4-40',
  'a4-65',
  'letter-30',
  'letter-14',
  'letter-10',
  'letter-6',
  'letter-80',
  'packet-a4',
  'packet-letter',
  'coin-1',
  'coin-3',
  'coin-4-half',
  'coin-5-half',
  'coin-6',
  'coin-7',
  'iso-c7',
  'iso-c6',
])
export type ShippedSheet = z.infer<typeof ShippedSheet>

/** A sheet with packet labels: one that the app brings along, or one of the library's own by its number. */
export const LabelSheet = z.union([ShippedSheet, z.templateLiteral(['own-', z.int().min(1)])])
export type LabelSheet = z.infer<typeof LabelSheet>

/** What a label says beside its number and QR code. */
export const LabelSays = z
  .enum(['what-fits', 'number-only'])
  .describe('as much as the sheet has room for, or nothing but the number, as for jars and shelves')
export type LabelSays = z.infer<typeof LabelSays>

const OffsetMm = z
  .tuple([z.number().min(-10).max(10), z.number().min(-10).max(10)])
  .describe('how far the print is moved right and down, mm')

const StartAt = z.int().min(1).max(200)

const Millimetres = z.number().min(0).max(500)

/** A sheet of labels of the library's own, in millimetres from the top left corner of the page. */
export const SheetMeasures = z.object({
  name: Line,
  pageWidthMm: z.number().min(20, says('fits.page-width')).max(500),
  pageHeightMm: z.number().min(20, says('fits.page-height')).max(500),
  columns: z.int().min(1).max(20),
  rows: z.int().min(1).max(40),
  widthMm: Millimetres.describe('of one label'),
  heightMm: Millimetres.describe('of one label'),
  leftMm: Millimetres.describe('from the edge of the page to the first label'),
  topMm: Millimetres.describe('from the edge of the page to the first label'),
  pitchXMm: Millimetres.describe('from one label’s left edge to the next one’s'),
  pitchYMm: Millimetres.describe('from one label’s top edge to the next one’s'),
})
export type SheetMeasures = z.infer<typeof SheetMeasures>

/** What kind of paper an item of the print tray needs. */
export const PrintKind = z.enum(PRINT_KINDS)
export type PrintKind = z.infer<typeof PrintKind>

const Copies = z.int().min(1, says('fits.one-copy')).max(200, says('fits.most-copies'))
const Contents = z
  .string()
  .trim()
  .max(60, says('fits.under-60'))
  .describe("what the packet says: '25 seeds'; empty: what the lot holds when it is printed")

const TrayItem = z.object({
  itemId: Id,
  title: Told,
  detail: Told,
  lotId: Id.nullable(),
  copies: z.int(),
  contents: z.string(),
  because: Told.describe('the entry that put it here, in words'),
  heldBack: Told.nullable().describe('why it cannot be printed'),
})
export type TrayItem = z.infer<typeof TrayItem>

/** Which items, and how the labels among them lie on their sheet. */
const WhatToPrint = {
  kind: PrintKind,
  itemIds: z.array(Id).min(1, says('fits.one-to-print')).max(500),
  sheet: LabelSheet.optional().describe('for labels'),
  startAt: StartAt.default(1),
  offsetMm: OffsetMm.default([0, 0]),
  says: LabelSays.default('what-fits'),
  cropMarks: z.boolean().default(false).describe('marks outside the labels where a blade is set'),
  printer: z.string().trim().max(60, says('fits.under-60')).default('').describe('whose offset it is'),
}

const LetterWords = z.string().trim().max(10_000, says('fits.letter-too-long'))

/** What happened in a calendar year. */
const YearFigures = z.object({
  gifts: z.int().describe('accessions that came in'),
  donors: z.int(),
  newPeople: z.int(),
  visits: z.int().describe('hand-outs'),
  takers: z.int().describe('people who took seed'),
  lotsOut: z.int().describe('lots of which seed went out'),
  seedsOut: z.int(),
  returns: z.int().describe('lots that came back'),
  returners: z.int(),
  tests: z.int().describe('germination tests that were finished'),
  tested: z.int().describe('seeds in those tests'),
  sprouted: z.int().describe('seeds that sprouted in them'),
  emptied: z.array(z.string()).describe('accessions whose last seed left, and none is held any more'),
  regrown: z.array(z.string()).describe('accessions of which seed came back or was grown again'),
})
export type YearFigures = z.infer<typeof YearFigures>

export const printOperations = {
  'label-sheet.list': reads(
    'Lists the label sheets that can be printed on.',
    z.strictObject({}),
    z.object({
      sheets: z.array(
        z.object({
          sheet: LabelSheet,
          name: Told,
          columns: z.int(),
          rows: z.int(),
          widthMm: z.number(),
          heightMm: z.number(),
          paper: z.enum(['labels', 'packets', 'envelope']),
          own: SheetMeasures.nullable().describe('its measures, where it is the library’s own'),
        }),
      ),
    }),
  ),
  'label-sheet.create': writes(
    'Keeps the measures of a label sheet of the library’s own, a new one or one kept before.',
    { sheetId: Id.nullable().default(null).describe('null: a new one'), measures: SheetMeasures },
    { sheet: LabelSheet },
  ),
  'label-sheet.retire': writes(
    'Takes a label sheet of the library’s own out of the choices; what was printed on it stays in the book.',
    { sheetId: Id },
    {},
  ),
  'label.print': reads(
    'Makes a PDF of packet labels, true to size, starting at any label of a sheet.',
    z.strictObject({
      labels: z
        .array(
          z.strictObject({
            lotId: Id,
            copies: z.int().min(1).max(200).default(1),
            contents: z
              .string()
              .trim()
              .max(60)
              .default('')
              .describe("'25 seeds'; left out: what the lot holds now"),
          }),
        )
        .min(1)
        .max(500),
      sheet: LabelSheet,
      startAt: StartAt.default(1),
      offsetMm: OffsetMm.default([0, 0]),
      says: LabelSays.default('what-fits'),
      cropMarks: z.boolean().default(false).describe('marks outside the labels where a blade is set'),
    }),
    z.object(PrintedPdf),
  ),
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
      leftOut: z.array(z.object({ personId: Id, name: z.string(), sentence: Told })),
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
    z.object(PrintedPdf),
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
          words: Told,
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
      words: Told,
      keeper: z.string(),
      shipped: Told.describe('the words that the app brings along'),
      fields: z.array(z.object({ field: z.string(), meaning: Told })),
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
    z.object({ ...PrintedPdf, to: z.string().describe('whose letter it is; empty: an invented donor') }),
  ),
  'keep-card.print': reads(
    'Makes cards for members taking seed home: how long each lot should keep in a cupboard, a fridge and a freezer, and how.',
    z.strictObject({
      lotIds: z.array(Id).max(50, says('fits.most-cards')).default([]),
      itemIds: z
        .array(Id)
        .max(500)
        .default([])
        .describe('slips of the print tray, for what went out on them'),
    }),
    z.object(PrintedPdf),
  ),
  'ruler.print': reads(
    'Makes a page to hold a ruler against: whether the printer keeps the scale, and how far it moves the print.',
    z.strictObject({
      offsetMm: OffsetMm.default([0, 0]),
    }),
    z.object(PrintedPdf),
  ),
  'stocktake.sheet': reads(
    'Makes a sheet to count on, place by place: every lot with seed, what the book says, and columns to write in.',
    z.strictObject({
      placeIds: z.array(Id).max(500).default([]).describe('left out: every place with lots'),
    }),
    z.object(PrintedPdf),
  ),
  'catalogue.print': reads(
    'Makes a list of the varieties that can be had now, without names of people beyond how donors wish to be credited.',
    z.strictObject({}),
    z.object({ ...PrintedPdf, listed: z.int().describe('accessions on the list') }),
  ),
  'catalogue.export': reads(
    'Makes the same list as one HTML page for everybody: it fetches nothing, runs nothing, and names donors only as they wish.',
    z.strictObject({}),
    z.object({ fileName: z.string(), html: z.string(), listed: z.int().describe('accessions on the list') }),
  ),
  'report.print': reads(
    'Makes the report of a calendar year: gifts, people, seed out and back, viability, what was lost and saved.',
    z.strictObject({ year: z.int().min(1800).max(9999) }),
    z.object({ ...PrintedPdf, figures: YearFigures }),
  ),
}
