import { z } from 'zod'
import { reads } from './operation.ts'

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
  withheld: z.array(z.string()).describe('what was left out, sentence by sentence'),
}

export const passportOperations = {
  'passport.make': reads(
    'Writes every accession as Multi-Crop Passport Descriptors (MCPD V.2.1) and says what in them does not fit.',
    Asked,
    z.object({
      ...Made,
      findings: z.array(
        z.object({ number: z.string(), level: z.enum(['error', 'warning']), sentence: z.string() }),
      ),
      found: z.int().describe('how many findings there are; the first are listed'),
    }),
  ),
  'occurrence.make': reads('Writes every accession as a row of simple Darwin Core.', Asked, z.object(Made)),
} as const
