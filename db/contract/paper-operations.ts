import { z } from 'zod'
import { Id, Line } from './fields.ts'
import { reads, writes } from './operation.ts'

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

const Millimetres = z.number().min(0).max(500)

/** A sheet of labels of the library's own, in millimetres from the top left corner of the page. */
export const SheetMeasures = z.object({
  name: Line,
  pageWidthMm: z.number().min(20, 'A page is 20 mm wide at least.').max(500),
  pageHeightMm: z.number().min(20, 'A page is 20 mm high at least.').max(500),
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

export const paperOperations = {
  'label-sheet.list': reads(
    'Lists the label sheets that can be printed on.',
    z.strictObject({}),
    z.object({
      sheets: z.array(
        z.object({
          sheet: LabelSheet,
          name: z.string(),
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
      startAt: z.int().min(1).max(200).default(1),
      offsetMm: z.tuple([z.number().min(-10).max(10), z.number().min(-10).max(10)]).default([0, 0]),
      says: LabelSays.default('what-fits'),
      cropMarks: z.boolean().default(false).describe('marks outside the labels where a blade is set'),
    }),
    z.object({
      pdf: z.string().describe('the PDF, base64'),
      fileName: z.string(),
      pages: z.int(),
      warnings: z.array(z.string()).describe('texts that had to be shortened, letters the font lacks'),
    }),
  ),
} as const
