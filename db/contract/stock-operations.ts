import { z } from 'zod'
import { LOT_RELATIONS } from '../domain/shared/closed-sets.ts'
import { MoveCaution } from './care-operations.ts'
import { SeedCaution } from './caution-operations.ts'
import { DuplicateTerms } from './elsewhere-operations.ts'
import {
  AccessionLine,
  Assurance,
  CountedUnit,
  CropId,
  Day,
  Id,
  Line,
  LivingStock,
  LotBasis,
  LotLine,
  LotName,
  LotRole,
  Measured,
  MovementKind,
  NeedState,
  PopulationGoal,
  pageOf,
  Quantity,
  Story,
  TypedAmount,
} from './fields.ts'
import { KeepingShown } from './keeping-operations.ts'
import { reads, writes } from './operation.ts'
import { Problem } from './problem.ts'
import { CameBack } from './return-operations.ts'
import { GiftLimits } from './terms-operations.ts'
import { says, Told } from './told.ts'

export const SeedWeight = z.object({
  weightId: Id.nullable(),
  measuredOn: z.string(),
  gramsPerHundred: z.number(),
  basis: z.enum(['measured', 'crop-default']),
  replicates: z.int(),
  seedsCounted: z.int(),
  coefficientOfVariation: z.number().nullable(),
  judgement: z.enum(['agree', 'weigh-again', 'not-judged']),
  words: Told,
})

const FoundLine = z.strictObject({
  lotId: Id,
  found: z.union([TypedAmount, z.literal('nothing')]).describe("an amount as typed, or 'nothing'"),
})

const SeedChange = z.object({ count: z.int(), massMg: z.int() })

const Replicate = z.strictObject({
  seeds: z.int().min(1).max(1_000_000),
  grams: z.number().positive().max(100_000),
})

export const ShelfRow = z.object({
  ...LotName,
  accessionId: Id,
  variety: z.string(),
  cropId: CropId,
  crop: z.string(),
  harvest: Told,
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
  ...pageOf(500, 100),
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
  overridden: Told.describe('cautions that the hand-out passed by, and why'),
  words: Told,
  takenBack: z.boolean(),
  undoable: z.boolean(),
})

export const LotRecord = z.object({
  ...LotName,
  scanCode: z.string(),
  accessionId: Id,
  accessionNumber: z.string(),
  variety: z.string(),
  varietyId: Id,
  synonyms: z.array(z.string()),
  cropId: CropId,
  crop: z.string(),
  species: z.string(),
  unit: CountedUnit,
  role: LotRole,
  basis: LotBasis,
  harvest: Told,
  generation: z.int(),
  grower: z.string(),
  grownAt: z.string(),
  placeId: Id.nullable(),
  place: z.string(),
  placeHistory: z.array(z.object({ place: z.string(), since: z.string() })),
  heldBy: z.string(),
  heldSince: z.string(),
  heldBefore: z
    .array(z.object({ holder: z.string(), since: z.string(), until: z.string() }))
    .describe('who held it as a safety duplicate before it came home, latest first'),
  quarantined: z.boolean(),
  quarantineReason: Told,
  cautions: z.array(SeedCaution),
  cameBack: CameBack.nullable().describe('null where it was not grown from seed of this library'),
  keeping: KeepingShown.describe('of the accession'),
  donor: z.string(),
  donorId: Id.nullable(),
  receivedOn: z.string(),
  donorWords: z.string(),
  story: z.string(),
  terms: z.string(),
  limits: GiftLimits.extend({ agreementEnds: z.string().nullable() }),
  limitsTold: z.array(Told).describe('what holds by the terms, a line each; none: no limits'),
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
      words: Told,
    }),
  ),
  stock: LivingStock.describe('of the accession, over all its lots'),
  lotLiving: z.int(),
  siblings: z.array(
    z.object({
      ...LotName,
      role: LotRole,
      harvest: Told,
      quantity: Quantity,
      living: z.int(),
    }),
  ),
  parents: z.array(z.object({ ...LotName, relation: z.enum(LOT_RELATIONS) })),
  ledger: z.array(LedgerLine),
})
export type LotRecord = z.infer<typeof LotRecord>

export const stockOperations = {
  'lot.record-weight': writes(
    'Records a hundred-seed weight of a lot from one counted sample or from replicates.',
    {
      lotId: Id,
      on: Day,
      replicates: z.array(Replicate).min(1).max(50),
      chaffy: z.boolean().default(false),
      note: Story.default(''),
    },
    { weight: SeedWeight, balance: Quantity, warnings: z.array(Told) },
  ),
  'lot.record-count': writes(
    'Sets a lot to what was found by weighing or counting, and writes the difference with its reason.',
    { ...FoundLine.shape, on: Day, reason: Line },
    { change: SeedChange, balance: Quantity },
  ),
  'stocktake.preview': reads(
    'Shows what was found lot by lot beside what the book says, without writing anything.',
    z.strictObject({ lines: z.array(FoundLine).max(500) }),
    z.object({
      lines: z.array(
        z.object({
          lotId: Id,
          book: Quantity.nullable(),
          change: SeedChange.nullable(),
          problem: Problem.nullable(),
        }),
      ),
    }),
  ),
  'stocktake.record': writes(
    'Sets several lots to what was found, such as all of one shelf, as one entry.',
    { on: Day, reason: Line, lines: z.array(FoundLine).min(1, says('fits.one-counted')).max(500) },
    {
      lines: z.array(z.object({ ...LotName, change: SeedChange, balance: Quantity })),
    },
  ),
  'lot.split': writes(
    'Moves part of a lot to a new lot of the same accession, such as a reserve.',
    {
      lotId: Id,
      on: Day,
      amount: TypedAmount,
      role: LotRole,
      placeId: Id.nullable().default(null),
      heldBy: z.string().trim().max(200).default('').describe('who holds a safety duplicate elsewhere'),
      terms: DuplicateTerms.nullable().default(null).describe('what they agreed to'),
      note: Story.default(''),
    },
    { newLotId: Id, newLotNumber: z.string(), left: Quantity, moved: Quantity },
  ),
  'lot.merge': writes(
    'Pours lots of one accession into one of them; the others are left empty.',
    { intoLotId: Id, fromLotIds: z.array(Id).min(1).max(50), on: Day, note: Story.default('') },
    { balance: Quantity },
  ),
  'lot.move': writes(
    'Moves lots to another storage place and keeps where they were.',
    { lotIds: z.array(Id).min(1).max(1_000), placeId: Id, on: Day },
    { place: z.string(), cautions: z.array(MoveCaution).describe('why seed should not lie there as it is') },
  ),
  'lot.discard': writes(
    'Throws seed of a lot away, with the reason.',
    { lotId: Id, on: Day, amount: z.union([TypedAmount, z.literal('everything')]), reason: Line },
    { left: Quantity },
  ),
  'lot.quarantine': writes(
    'Keeps a lot from being handed out until it is checked.',
    { lotId: Id, reason: Line },
    {},
  ),
  'lot.release': writes(
    'Ends the quarantine of a lot, saying what was checked.',
    { lotId: Id, checked: Line },
    {},
  ),
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
          ...LotLine,
          words: Told,
        }),
      ),
      people: z.array(z.object({ personId: Id, name: z.string(), town: z.string() })),
    }),
  ),
  'accession.list-states': reads(
    'Lists how every accession stands: living seeds against what must be kept, worst first.',
    z.strictObject({
      state: NeedState.optional(),
      ...pageOf(1_000, 100),
    }),
    z.object({
      counts: z.record(NeedState, z.int()),
      accessions: z.array(
        z.object({
          ...AccessionLine,
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
}
