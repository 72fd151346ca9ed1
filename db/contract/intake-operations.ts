import { z } from 'zod'
import { Caution, CropId, Day, Id, Line, LotRole, Story, TypedAmount } from './fields.ts'
import { Decline, KeepForLater, TakeIn } from './gift-decision.ts'
import { reads, writes } from './operation.ts'
import { CropFields, PersonFields } from './reference-operations.ts'

/** Somebody already known, or a new person made in the same step. */
export const WhoIsIt = z.union([
  z.strictObject({ personId: Id }),
  z.strictObject({ newPerson: z.strictObject(PersonFields) }),
])

/** A variety already known, or a new one of a crop, which may be new itself. */
export const WhichVariety = z.union([
  z.strictObject({ varietyId: Id }),
  z.strictObject({ newVariety: z.strictObject({ cropId: CropId, name: Line }) }),
  z.strictObject({ newVariety: z.strictObject({ newCrop: z.strictObject(CropFields), name: Line }) }),
])

const CautionFields = {
  cautions: z.array(Caution).default([]),
  cautionNote: z.string().trim().max(500).default('').describe('such as the name of a seed treatment'),
}

export const Gift = z.strictObject({
  variety: WhichVariety,
  harvest: z.string().max(40).default('').describe("'2024', 'about 2019', '2017-2019', or empty for unknown"),
  amount: TypedAmount,
  sample: z
    .string()
    .max(100)
    .default('')
    .describe("a counted and weighed sample that gives the hundred-seed weight: '25 weigh 6.10 g'"),
  grownAt: z.string().trim().max(200).default('').describe('where it was grown'),
  donorWords: Story.default('').describe('in the words of the donor: a letter to them says these again'),
  story: Story.default('').describe(
    'what the library writes of it: stands on packets and lists, in no letter',
  ),
  terms: z.string().trim().max(2_000).default('').describe('what the donor asked for'),
  ...CautionFields,
  role: LotRole.exclude(['duplicate-elsewhere']).default('working'),
  placeId: Id.nullable().default(null),
})

/** A gift as it is decided at the table: taken in, kept for later, or declined with the reason. */
const DecidedGift = Gift.extend({
  decision: z.discriminatedUnion('kind', [TakeIn, KeepForLater, Decline]).default({ kind: 'take-in' }),
})

export const TakenIn = z.object({
  accessionId: Id,
  accessionNumber: z.string(),
  lotId: Id,
  lotNumber: z.string(),
  scanCode: z.string(),
  words: z.string().describe('how the amount was read'),
  quarantined: z.boolean(),
  warnings: z.array(z.string()),
})

export const intakeOperations = {
  'intake.record': writes(
    'Takes in the gifts of one donor: an accession and a numbered lot for each, unless it is kept for later or declined.',
    {
      donor: WhoIsIt.nullable().describe('null where nobody knows who brought it'),
      receivedOn: Day,
      gifts: z.array(DecidedGift).min(1, 'Add at least one gift.').max(100),
    },
    {
      personId: Id.nullable(),
      taken: z.array(TakenIn),
      kept: z
        .array(z.object({ giftId: Id, variety: z.string(), decision: z.enum(['later', 'decline']) }))
        .describe('gifts that got no number: kept for later or declined'),
    },
  ),
  'return.record': writes(
    'Takes back seed that somebody grew from a lot: a new lot with its parent and generation.',
    {
      person: WhoIsIt,
      parentLotId: Id,
      withdrawalId: Id.nullable().default(null),
      growOutId: Id.nullable()
        .default(null)
        .describe('the grow-out that it was harvested from; null: the one its hand-out was for, if any'),
      receivedOn: Day,
      harvest: z.string().max(40).default(''),
      amount: TypedAmount,
      sample: z.string().max(100).default(''),
      plantsGrown: z.int().min(1).max(1_000_000).nullable().default(null),
      grownAt: z.string().trim().max(200).default(''),
      note: Story.default(''),
      ...CautionFields,
      placeId: Id.nullable().default(null),
    },
    { personId: Id, taken: TakenIn },
  ),
  'amount.preview': reads(
    'Reads a typed amount back in words, for a crop or a lot, without writing anything.',
    z.strictObject({
      text: TypedAmount,
      sample: z.string().max(100).default(''),
      cropId: CropId.optional(),
      lotId: Id.optional(),
    }),
    z.object({
      reading: z.enum(['amount', 'ask', 'unreadable', 'empty']),
      words: z.string(),
      choices: z.array(z.string()),
      count: z.int().nullable(),
      massMg: z.int().nullable(),
      weightNote: z.string().describe('the hundred-seed weight used and where it comes from'),
      warning: z.string().nullable().describe('such as a weight outside the plausible band'),
    }),
  ),
} as const
