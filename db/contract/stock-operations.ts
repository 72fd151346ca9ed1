import { z } from 'zod'
import { Day, Id, Line, LotRole, Quantity, Story, TypedAmount } from './fields.ts'
import { MoveCaution } from './lot-storage-operations.ts'
import { reads, writes } from './operation.ts'
import { Problem } from './problem.ts'

export const SeedWeight = z.object({
  weightId: Id.nullable(),
  measuredOn: z.string(),
  gramsPerHundred: z.number(),
  basis: z.enum(['measured', 'crop-default']),
  replicates: z.int(),
  seedsCounted: z.int(),
  coefficientOfVariation: z.number().nullable(),
  judgement: z.enum(['agree', 'weigh-again', 'not-judged']),
  words: z.string(),
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
    { weight: SeedWeight, balance: Quantity, warnings: z.array(z.string()) },
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
    { on: Day, reason: Line, lines: z.array(FoundLine).min(1, 'Weigh or count at least one lot.').max(500) },
    {
      lines: z.array(z.object({ lotId: Id, lotNumber: z.string(), change: SeedChange, balance: Quantity })),
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
} as const
