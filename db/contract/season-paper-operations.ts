import { z } from 'zod'
import { Id } from './fields.ts'
import { reads } from './operation.ts'

const Made = {
  pdf: z.string().describe('the PDF, base64'),
  fileName: z.string(),
  pages: z.int(),
  warnings: z.array(z.string()).describe('what could not be printed as asked'),
}

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

export const seasonPaperOperations = {
  'keep-card.print': reads(
    'Makes cards for members taking seed home: how long each lot should keep in a cupboard, a fridge and a freezer, and how.',
    z.strictObject({
      lotIds: z.array(Id).max(50, 'Make 50 cards at most at once.').default([]),
      itemIds: z
        .array(Id)
        .max(500)
        .default([])
        .describe('slips of the print tray, for what went out on them'),
    }),
    z.object(Made),
  ),
  'ruler.print': reads(
    'Makes a page to hold a ruler against: whether the printer keeps the scale, and how far it moves the print.',
    z.strictObject({
      offsetMm: z.tuple([z.number().min(-10).max(10), z.number().min(-10).max(10)]).default([0, 0]),
    }),
    z.object(Made),
  ),
  'stocktake.sheet': reads(
    'Makes a sheet to count on, place by place: every lot with seed, what the book says, and columns to write in.',
    z.strictObject({
      placeIds: z.array(Id).max(500).default([]).describe('left out: every place with lots'),
    }),
    z.object(Made),
  ),
  'catalogue.print': reads(
    'Makes a list of the varieties that can be had now, without names of people beyond how donors wish to be credited.',
    z.strictObject({}),
    z.object({ ...Made, listed: z.int().describe('accessions on the list') }),
  ),
  'catalogue.export': reads(
    'Makes the same list as one HTML page for everybody: it fetches nothing, runs nothing, and names donors only as they wish.',
    z.strictObject({}),
    z.object({ fileName: z.string(), html: z.string(), listed: z.int().describe('accessions on the list') }),
  ),
  'report.print': reads(
    'Makes the report of a calendar year: gifts, people, seed out and back, viability, what was lost and saved.',
    z.strictObject({ year: z.int().min(1800).max(9999) }),
    z.object({ ...Made, figures: YearFigures }),
  ),
} as const
