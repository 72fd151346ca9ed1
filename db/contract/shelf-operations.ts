import { z } from 'zod'
import {
  Assurance,
  Caution,
  CropId,
  Id,
  LivingStock,
  LotBasis,
  LotRole,
  Measured,
  MovementKind,
  NeedState,
  PopulationGoal,
  Quantity,
} from './fields.ts'
import { reads, writes } from './operation.ts'
import { SeedWeight } from './stock-operations.ts'

export const ShelfRow = z.object({
  lotId: Id,
  lotNumber: z.string(),
  accessionId: Id,
  variety: z.string(),
  cropId: CropId,
  crop: z.string(),
  harvest: z.string(),
  role: LotRole,
  place: z.string(),
  donor: z.string(),
  quantity: Quantity,
  living: z.int(),
  quarantined: z.boolean(),
  state: NeedState.describe('of the accession, over all its lots'),
  keep: z.int(),
  accessionLiving: z.int(),
  accessionLow: z.int().describe('with the doubt of counts and forecasts'),
  accessionHigh: z.int(),
  forecastOn: z.string().describe('the day that the living seeds are forecast for; empty: assumed'),
})
export type ShelfRow = z.infer<typeof ShelfRow>

/** How many lots are chosen at once, at most. */
const MOST_CHOSEN = 500

const ShelfQuery = z.strictObject({
  text: z.string().max(200).default(''),
  cropId: CropId.optional(),
  role: LotRole.optional(),
  state: NeedState.optional(),
  placeId: Id.optional(),
  lotIds: z.array(Id).max(MOST_CHOSEN).optional().describe('only these lots'),
  quarantined: z.boolean().optional(),
  emptyToo: z.boolean().default(false).describe('lots that hold nothing any more'),
  sort: z.enum(['number', 'variety', 'crop', 'harvest', 'count', 'place']).default('number'),
  descending: z.boolean().default(false),
  offset: z.int().min(0).default(0),
  limit: z.int().min(1).max(500).default(100),
})

const LedgerLine = z.object({
  movementId: Id,
  entryId: Id,
  on: z.string(),
  kind: MovementKind,
  count: z.int(),
  massMg: z.int(),
  balanceCount: z.int(),
  balanceMassMg: z.int(),
  measured: Measured,
  gramsPerHundred: z.number().nullable(),
  person: z.string(),
  purpose: z.string(),
  note: z.string(),
  overridden: z.string().describe('cautions that the hand-out passed by, and why'),
  words: z.string(),
  takenBack: z.boolean(),
  undoable: z.boolean(),
})

export const LotRecord = z.object({
  lotId: Id,
  lotNumber: z.string(),
  scanCode: z.string(),
  accessionId: Id,
  accessionNumber: z.string(),
  variety: z.string(),
  varietyId: Id,
  synonyms: z.array(z.string()),
  cropId: CropId,
  crop: z.string(),
  species: z.string(),
  unit: z.object({ one: z.string(), many: z.string() }),
  role: LotRole,
  basis: LotBasis,
  harvest: z.string(),
  generation: z.int(),
  grower: z.string(),
  grownAt: z.string(),
  placeId: Id.nullable(),
  place: z.string(),
  placeHistory: z.array(z.object({ place: z.string(), since: z.string() })),
  heldBy: z.string(),
  heldSince: z.string(),
  quarantined: z.boolean(),
  quarantineReason: z.string(),
  cautions: z.array(z.object({ caution: Caution, note: z.string(), text: z.string() })),
  donor: z.string(),
  donorId: Id.nullable(),
  receivedOn: z.string(),
  donorWords: z.string(),
  story: z.string(),
  terms: z.string(),
  packetSeeds: z.int().nullable(),
  quantity: Quantity,
  weight: SeedWeight,
  weights: z.array(SeedWeight),
  germination: z.array(
    z.object({
      testId: Id,
      testedOn: z.string(),
      tested: z.int(),
      sprouted: z.int(),
      percent: z.number(),
      low: z.number(),
      high: z.number(),
      words: z.string(),
    }),
  ),
  stock: LivingStock.describe('of the accession, over all its lots'),
  lotLiving: z.int(),
  siblings: z.array(
    z.object({
      lotId: Id,
      lotNumber: z.string(),
      role: LotRole,
      harvest: z.string(),
      quantity: Quantity,
      living: z.int(),
    }),
  ),
  parents: z.array(
    z.object({ lotId: Id, lotNumber: z.string(), relation: z.enum(['grown', 'split', 'joined']) }),
  ),
  ledger: z.array(LedgerLine),
})
export type LotRecord = z.infer<typeof LotRecord>

export const shelfOperations = {
  'lot.list': reads(
    'Lists lots of the shelf, filtered, sorted and a page at a time.',
    ShelfQuery,
    z.object({ rows: z.array(ShelfRow), total: z.int() }),
  ),
  'lot.export': reads(
    'Writes some lots as a CSV file for a spreadsheet, in the order given.',
    z.strictObject({
      lotIds: z.array(Id).min(1).max(MOST_CHOSEN),
      exact: z
        .boolean()
        .default(false)
        .describe('for programs: no mark, and nothing put before what a spreadsheet takes for a formula'),
    }),
    z.object({
      fileName: z.string(),
      csv: z.string().describe('RFC 4180; for a spreadsheet in UTF-8 with a byte order mark'),
    }),
  ),
  'lot.workbook': reads(
    'Writes some lots as an .xlsx workbook, in the order given.',
    z.strictObject({ lotIds: z.array(Id).min(1).max(MOST_CHOSEN) }),
    z.object({ fileName: z.string(), content: z.string().describe('the file, as base64') }),
  ),
  'lot.get': reads(
    'Shows everything known of a lot, its accession and its ledger.',
    z.strictObject({ lotId: Id }),
    LotRecord,
  ),
  'collection.search': reads(
    'Finds lots, varieties and people by a scanned code, a number or a few letters.',
    z.strictObject({ text: z.string().max(200), limit: z.int().min(1).max(20).default(8) }),
    z.object({
      exactLotId: Id.nullable().describe('the one lot that a scanned code or a full number names'),
      scan: z.enum(['fits', 'does-not-fit', 'not-a-scan']).describe('whether the check character fits'),
      lots: z.array(
        z.object({
          lotId: Id,
          lotNumber: z.string(),
          variety: z.string(),
          crop: z.string(),
          words: z.string(),
        }),
      ),
      people: z.array(z.object({ personId: Id, name: z.string(), town: z.string() })),
    }),
  ),
  'accession.list-states': reads(
    'Lists how every accession stands: living seeds against what must be kept, worst first.',
    z.strictObject({
      state: NeedState.optional(),
      offset: z.int().min(0).default(0),
      limit: z.int().min(1).max(1_000).default(100),
    }),
    z.object({
      counts: z.record(NeedState, z.int()),
      accessions: z.array(
        z.object({
          accessionId: Id,
          accessionNumber: z.string(),
          variety: z.string(),
          crop: z.string(),
          stock: LivingStock,
        }),
      ),
      total: z.int(),
    }),
  ),
  'accession.change-policy': writes(
    "Sets the keeper's own grade, plants, regrowings, viability threshold or assurance for one accession; null goes back to the crop's.",
    {
      accessionId: Id,
      grade: PopulationGoal.nullable().optional(),
      plantsToKeep: z.int().min(1).max(10_000).nullable().optional(),
      regrowingsKept: z.int().min(1).max(20).nullable().optional(),
      viabilityThreshold: z.number().min(0.05).max(1).nullable().optional(),
      assurance: Assurance.nullable().optional(),
    },
    { stock: LivingStock },
  ),
} as const
