import { z } from 'zod'
import { keeps, reads } from './operation.ts'

const Content = z.string().describe('the file, as base64')

export const packageOperations = {
  'package.export': reads(
    'Writes the whole collection as a Data Package: a CSV file for each table and datapackage.json with their meaning and units.',
    z.strictObject({
      people: z.boolean().default(false).describe('with names and contacts; left out unless asked for'),
      places: z.boolean().default(false).describe('with exact places of growing; left out unless asked for'),
    }),
    z.object({
      fileName: z.string(),
      content: Content,
      tables: z.int(),
      rows: z.int(),
      withheld: z.array(z.string()).describe('what was left out, sentence by sentence'),
    }),
  ),
  'package.import': keeps(
    'Reads a whole collection back from a Data Package into one in which nothing was written yet; all of it or nothing.',
    z.strictObject({ content: z.base64('Send the file as base64.').min(1, 'That file is empty.') }),
    z.object({ tables: z.int(), rows: z.int(), said: z.string() }),
  ),
} as const
