import { z } from 'zod'
import { PROMISE_STATES } from '../domain/promises/promise.ts'
import { LIMITS_ON_GIVING } from '../domain/terms/gift-limits.ts'
import { InstitutionTerms } from './elsewhere-operations.ts'
import {
  Caution,
  Day,
  Id,
  Line,
  LivingStock,
  LotLine,
  LotName,
  NeedState,
  pageOf,
  Quantity,
  Story,
  TypedAmount,
  WhoIsIt,
  WithdrawalPurpose,
} from './fields.ts'
import { reads, writes } from './operation.ts'
import { Problem } from './problem.ts'
import { ShelfRow } from './stock-operations.ts'
import { says, Told } from './told.ts'

export const SeedPromise = z.object({
  words: Told.describe('what they mean to bring back, in their words'),
  by: z.string().nullable().describe('the day by which; null where none was named'),
  state: z.enum(PROMISE_STATES),
  waiverReason: z.string().describe('why it is no longer waited for; empty while it is'),
})
export type SeedPromise = z.infer<typeof SeedPromise>

const LotOut = z.object({
  ...LotLine,
  words: Told.describe('how much went out'),
  growOut: z
    .object({
      growOutId: Id,
      site: z.string(),
      plants: z.int().nullable().describe('from how many seed was saved, where it was noted'),
    })
    .nullable()
    .describe('the grow-out that it was for; null where for none'),
})

const Visit = z.object({
  withdrawalId: Id,
  on: z.string(),
  purpose: WithdrawalPurpose,
  lots: z.array(LotOut),
})

export const VisitOut = Visit.extend({
  promise: SeedPromise.nullable().describe('null where nothing was promised'),
  back: z.array(z.object({ ...LotName, on: z.string() })).describe('lots that came back of it'),
})
export type VisitOut = z.infer<typeof VisitOut>

const Reminder = Visit.extend({
  personId: Id.nullable(),
  person: z.string().describe("'a member' where nobody was named"),
  town: z.string(),
  promise: SeedPromise,
  mayWrite: z.boolean().describe('they agreed to be written to; how to reach them is empty otherwise'),
  email: z.string(),
  phone: z.string(),
  address: z.string(),
})
export type Reminder = z.infer<typeof Reminder>

const LeftInLot = z.object({
  ...LotName,
  left: Quantity,
  state: NeedState,
  sentence: Told,
})

export const Override = z.enum([
  'reference-sample',
  'reserve',
  'too-few-left',
  'over-limit',
  ...LIMITS_ON_GIVING,
  'closed',
  ...Caution.options,
])
export type Override = z.infer<typeof Override>

const WithdrawalLine = z.strictObject({
  lotId: Id,
  amount: TypedAmount,
  note: z.string().trim().max(500).default(''),
})

const PreviewedCaution = z.object({ despite: Override, sentence: Told })

const LinePreview = z.object({
  ...LotName,
  taken: Quantity.nullable(),
  left: Quantity.nullable(),
  stock: LivingStock.describe('of the accession after every line up to this one'),
  cautions: z.array(PreviewedCaution),
  problem: Problem.nullable().describe('what would be refused whatever is overridden'),
})

export const withdrawalOperations = {
  'withdrawal.list-open': reads(
    'Lists the visits on which a person took seed: what is still promised first, overdue before the rest.',
    z.strictObject({ personId: Id, limit: z.int().min(1).max(200).default(50) }),
    z.object({ visits: z.array(VisitOut), total: z.int() }),
  ),
  'promise.list': reads(
    'Lists promises that are still waited for: who promised what by when, overdue first.',
    z.strictObject({
      overdueOnly: z.boolean().default(false),
      ...pageOf(200, 50),
    }),
    z.object({ promises: z.array(Reminder), total: z.int(), overdue: z.int() }),
  ),
  'promise.waive': writes(
    'Stops waiting for what was promised on a visit, with the reason.',
    { withdrawalId: Id, reason: Line },
    {},
  ),
  'withdrawal.list-lots': reads(
    'Offers working lots for handing out: the oldest good lot of each variety first, with why.',
    z.strictObject({ text: z.string().max(200), limit: z.int().min(1).max(50).default(10) }),
    z.object({ lots: z.array(ShelfRow.extend({ why: Told, packetSeeds: z.int().nullable() })) }),
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
      lines: z.array(WithdrawalLine).min(1, says('fits.one-lot')).max(200),
      growOutId: Id.nullable().default(null).describe('the grow-out of a saved plan that it is for'),
      promised: z.string().trim().max(500).default('').describe('what they mean to bring back'),
      promisedBy: Day.nullable().default(null),
      note: Story.default(''),
      despite: z.array(Override).default([]).describe('cautions that were read and overridden'),
      reason: z.string().trim().max(500).default('').describe('why a caution was overridden'),
      slip: z.boolean().default(false).describe('puts a withdrawal slip into the print tray'),
      institution: InstitutionTerms.nullable()
        .default(null)
        .describe('what belongs to a hand-out to an institution'),
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
        .min(1, says('fits.one-line'))
        .max(200),
      note: Story.default(''),
    },
    { visits: z.array(z.object({ withdrawalId: Id, personId: Id.nullable() })), lines: z.array(LeftInLot) },
  ),
}
