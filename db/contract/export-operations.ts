import { z } from 'zod'
import { keeps, reads } from './operation.ts'
import { says, Told } from './told.ts'

const Content = z.string().describe('the file, as base64')

const Asked = z.strictObject({
  people: z
    .boolean()
    .default(false)
    .describe('with the names of donors and collectors; left out unless asked for'),
  places: z.boolean().default(false).describe('with exact places; left out unless asked for'),
})

const Made = {
  fileName: z.string(),
  csv: z.string().describe('exact, for programs: a spreadsheet may take a text in it for a formula'),
  rows: z.int(),
  withheld: z.array(Told).describe('what was left out, sentence by sentence'),
}

export const exportOperations = {
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
      withheld: z.array(Told).describe('what was left out, sentence by sentence'),
    }),
  ),
  'package.import': keeps(
    'Reads a whole collection back from a Data Package into one in which nothing was written yet; all of it or nothing.',
    z.strictObject({ content: z.base64(says('fits.file-base64')).min(1, says('fits.file-empty')) }),
    z.object({ tables: z.int(), rows: z.int(), said: Told }),
  ),
  'person.list-names-in-texts': reads(
    'Lists first names and surnames of people in the book that stand in texts which may go out, each with where.',
    z.strictObject({}),
    z.object({
      total: z.int(),
      names: z.array(
        z.object({
          name: z.string().describe('folded, as the settings keep it'),
          masked: z.boolean().describe('whether the keeper wants it left out'),
          total: z.int().describe('of how many texts'),
          places: z.array(z.object({ where: Told, text: z.string() })),
        }),
      ),
    }),
  ),
  'passport.export': reads(
    'Writes every accession as Multi-Crop Passport Descriptors (MCPD V.2.1) and says what in them does not fit.',
    Asked,
    z.object({
      ...Made,
      findings: z.array(
        z.object({
          level: z.enum(['error', 'warning']),
          sentence: Told,
          times: z.int().describe('of how many accessions it is true'),
          first: z.string().describe('the number of the first of them'),
        }),
      ),
      found: z
        .int()
        .describe('how many different findings there are; the first are listed, errors before warnings'),
    }),
  ),
  'stock.export': reads(
    'Writes every lot as an exact CSV for programs, with its seed, where it lies and how much of it lives.',
    Asked.pick({ people: true }),
    z.object(Made),
  ),
  'occurrence.export': reads('Writes every accession as a row of simple Darwin Core.', Asked, z.object(Made)),
}
