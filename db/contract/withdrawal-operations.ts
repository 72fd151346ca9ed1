import { z } from 'zod'
import {
  Caution,
  Day,
  Id,
  LivingStock,
  NeedState,
  Quantity,
  Story,
  TypedAmount,
  WithdrawalPurpose,
} from './fields.ts'
import { WhoIsIt } from './intake-operations.ts'
import { reads, writes } from './operation.ts'
import { Problem } from './problem.ts'
import { ShelfRow } from './shelf-operations.ts'

const LeftInLot = z.object({
  lotId: Id,
  lotNumber: z.string(),
  left: Quantity,
  state: NeedState,
  sentence: z.string(),
})

export const Override = z.enum([
  'reference-sample',
  'reserve',
  'too-few-left',
  'over-limit',
  ...Caution.options,
])
export type Override = z.infer<typeof Override>

const WithdrawalLine = z.strictObject({
  lotId: Id,
  amount: TypedAmount,
  note: z.string().trim().max(500).default(''),
})

const PreviewedCaution = z.object({ despite: Override, sentence: z.string() })

const LinePreview = z.object({
  lotId: Id,
  lotNumber: z.string(),
  taken: Quantity.nullable(),
  left: Quantity.nullable(),
  stock: LivingStock.describe('of the accession after every line up to this one'),
  cautions: z.array(PreviewedCaution),
  problem: Problem.nullable().describe('what would be refused whatever is overridden'),
})

export const withdrawalOperations = {
  'withdrawal.list-lots': reads(
    'Offers working lots for handing out: the oldest good lot of each variety first, with why.',
    z.strictObject({ text: z.string().max(200), limit: z.int().min(1).max(50).default(10) }),
    z.object({ lots: z.array(ShelfRow.extend({ why: z.string(), packetSeeds: z.int().nullable() })) }),
  ),
  'withdrawal.preview': reads(
    'Says what handing these out would do: what is left, what needs a reason, what would be refused.',
    z.strictObject({
      purpose: WithdrawalPurpose.default('to-grow'),
      lines: z.array(WithdrawalLine).max(200),
    }),
    z.object({
      lines: z.array(LinePreview),
      cautions: z.array(PreviewedCaution).describe('about the visit as a whole'),
    }),
  ),
  'withdrawal.record': writes(
    'Hands seed out of one or more lots to a person: one visit.',
    {
      person: WhoIsIt.nullable().describe('null where nobody is to be named'),
      on: Day,
      purpose: WithdrawalPurpose.default('to-grow'),
      lines: z.array(WithdrawalLine).min(1, 'Add at least one lot.').max(200),
      growOutId: Id.nullable().default(null).describe('the grow-out of a saved plan that it is for'),
      promised: z.string().trim().max(500).default('').describe('what they mean to bring back'),
      promisedBy: Day.nullable().default(null),
      note: Story.default(''),
      despite: z.array(Override).default([]).describe('cautions that were read and overridden'),
      reason: z.string().trim().max(500).default('').describe('why a caution was overridden'),
      slip: z.boolean().default(false).describe('puts a withdrawal slip into the print tray'),
    },
    { withdrawalId: Id, personId: Id.nullable(), lines: z.array(LeftInLot) },
  ),
  'paper-sheet.record': writes(
    'Types a paper sign-out sheet in afterwards: one line for each person and packet, one entry for the sheet.',
    {
      on: Day.describe('the day on the sheet'),
      lines: z
        .array(
          z.strictObject({
            person: WhoIsIt.nullable().describe('null where the name cannot be read'),
            lotId: Id,
            amount: TypedAmount,
            note: z.string().trim().max(500).default(''),
          }),
        )
        .min(1, 'Add at least one line.')
        .max(200),
      note: Story.default(''),
    },
    { visits: z.array(z.object({ withdrawalId: Id, personId: Id.nullable() })), lines: z.array(LeftInLot) },
  ),
} as const
