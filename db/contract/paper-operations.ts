import { z } from 'zod'
import { Id } from './fields.ts'
import { reads } from './operation.ts'

export const LabelSheet = z.enum(['a4-21', 'a4-24', 'a4-65', 'letter-30', 'letter-10', 'letter-80'])
export type LabelSheet = z.infer<typeof LabelSheet>

export const paperOperations = {
  'label.sheets': reads(
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
        }),
      ),
    }),
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
    }),
    z.object({
      pdf: z.string().describe('the PDF, base64'),
      fileName: z.string(),
      pages: z.int(),
      warnings: z.array(z.string()).describe('texts that had to be shortened, letters the font lacks'),
    }),
  ),
} as const
