import { z } from 'zod'
import { ACCESSION_POLICIES, BREEDING_STATUSES, WAITING_STEPS } from '../domain/shared/closed-sets.ts'
import {
  Caution,
  CropId,
  Day,
  Id,
  Line,
  LotLine,
  LotName,
  LotRole,
  Story,
  TypedAmount,
  WhoIsIt,
} from './fields.ts'
import { reads, writes } from './operation.ts'
import { CropFields } from './reference-operations.ts'
import { ReturnAnswers } from './return-operations.ts'
import { GiftLimits } from './terms-operations.ts'
import { says, Told } from './told.ts'

/** What a gift may have to wait for before it is taken in. */
export const WaitingStep = z.enum(WAITING_STEPS)
export type WaitingStep = z.infer<typeof WaitingStep>

export const Wait = z.strictObject({
  step: WaitingStep,
  due: Day.nullable().default(null),
  note: z.string().trim().max(500).default(''),
})

export const KeepForLater = z.strictObject({
  kind: z.literal('later'),
  waitsFor: z.array(Wait).max(6).default([]),
})

export const Decline = z.strictObject({ kind: z.literal('decline'), reason: Line })

export const TakeIn = z.strictObject({ kind: z.literal('take-in') })

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
  limits: GiftLimits.nullable().default(null).describe('what of that holds by itself; null: no limits'),
  ...CautionFields,
  breeding: z.enum(BREEDING_STATUSES).default('unknown').describe('how it was bred'),
  policy: z
    .enum(ACCESSION_POLICIES)
    .exclude(['closed'])
    .nullable()
    .default(null)
    .describe('whether it is kept and regrown; null: as is usual for how it was bred'),
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
  ...LotName,
  scanCode: z.string(),
  words: Told.describe('how the amount was read'),
  quarantined: z.boolean(),
  warnings: z.array(Told),
})

const OpenWait = z.object({
  step: WaitingStep,
  words: Told.describe('what is being waited for, in words'),
  since: z.string(),
  due: z.string().nullable(),
  late: z.boolean(),
  note: z.string(),
  caution: Told.describe('the usual caution for this step; may be empty'),
})

export const WaitingGift = z.object({
  giftId: Id,
  offeredOn: z.string(),
  donorId: Id.nullable(),
  donor: z.string(),
  variety: z.string(),
  crop: z.string(),
  amount: z.string().describe('as it was typed'),
  state: z.enum(['offered', 'declined', 'accepted']),
  reason: z.string().describe('why it was declined'),
  waitsFor: z.array(OpenWait),
  done: z.array(z.object({ step: WaitingStep, words: Told, on: z.string(), note: z.string() })),
  accessionNumber: z.string().describe('once taken in'),
  lotId: Id.nullable().describe('the lot it became'),
  gift: Gift,
})
export type WaitingGift = z.infer<typeof WaitingGift>

/** The largest list that is read, in characters of base64: about 8 MB. */
const LONGEST_LIST = 11_000_000

const Encoding = z.enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252', 'macintosh'])
const Delimiter = z.enum([',', ';', '\t', '|'])

const ColumnUse = z
  .string()
  .max(40)
  .describe('a field such as variety or amount, an MCPD code such as COLLSITE, or leave-out')

const List = {
  fileName: Line,
  content: z
    .base64(says('fits.file-base64'))
    .min(1, says('fits.file-empty'))
    .max(LONGEST_LIST, says('fits.list-too-large'))
    .describe('the file itself, as base64'),
  choices: z
    .strictObject({
      sheet: z.string().max(200).optional(),
      encoding: Encoding.optional(),
      delimiter: Delimiter.optional(),
      headingRow: z.int().min(-1).max(200).optional().describe('counted from 0; -1: there are no headings'),
      columns: z.array(ColumnUse).max(200).optional().describe('what each column holds, in order'),
    })
    .default({})
    .describe('what the file does not tell by itself, or tells wrongly'),
  answers: z
    .record(z.string().max(300), z.string().max(300))
    .default({})
    .describe('what was chosen for each question, by its id'),
}

const Fate = z.enum(['new', 'there', 'doubtful', 'refused', 'left-out'])
export type Fate = z.infer<typeof Fate>

const Question = z.object({
  id: z.string(),
  about: z.enum([
    'crop',
    'variety',
    'person',
    'place',
    'unit',
    'packets',
    'amount',
    'no-amount',
    'order',
    'same',
  ]),
  sentence: Told,
  rows: z.int().describe('how many rows wait for it'),
  firstRow: z.int(),
  choices: z
    .array(z.object({ value: z.string(), words: Told }))
    .describe('the likeliest first; of a crop also crop:<id> of any other'),
  answered: z.string().nullable(),
})
export type ListQuestion = z.infer<typeof Question>

const ListPreview = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('read'),
    understood: z.array(Told).describe('how the file was understood, sentence by sentence'),
    sheets: z.array(z.string()),
    sheet: z.string().nullable(),
    encoding: Encoding.nullable(),
    delimiter: Delimiter.nullable(),
    headingRow: z.int(),
    remembered: z.boolean().describe('whether the columns are as the keeper mapped such a list before'),
    columns: z.array(z.object({ heading: z.string(), use: ColumnUse, sample: z.array(z.string()) })),
    fields: z.array(z.object({ use: ColumnUse, words: Told })).describe('what a column can be used for'),
    counts: z.record(Fate, z.int()),
    questions: z.array(Question).describe('the first of those that are open, then those answered'),
    openQuestions: z.int(),
    rows: z
      .array(
        z.object({
          row: z.int().describe('as a spreadsheet numbers it: the first line is 1'),
          fate: Fate,
          words: Told,
          because: Told,
        }),
      )
      .describe('the first of each fate'),
    findings: z
      .array(
        z.object({
          level: z.enum(['error', 'warning']),
          sentence: Told,
          times: z.int().describe('of how many rows it is true'),
          first: z.int().describe('the first of them'),
        }),
      )
      .describe(
        'what in a list of MCPD V.2.1 does not fit the descriptors, errors first; none of any other list',
      ),
  }),
  z.object({ kind: z.literal('unreadable'), because: Told }),
])
export type ListPreview = z.infer<typeof ListPreview>

export const intakeOperations = {
  'intake.record': writes(
    'Takes in the gifts of one donor: an accession and a numbered lot for each, unless it is kept for later or declined.',
    {
      donor: WhoIsIt.nullable().describe('null where nobody knows who brought it'),
      receivedOn: Day,
      gifts: z.array(DecidedGift).min(1, says('fits.one-gift')).max(100),
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
      ...ReturnAnswers,
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
      words: Told,
      choices: z.array(Told),
      count: z.int().nullable(),
      massMg: z.int().nullable(),
      weightNote: Told.describe('the hundred-seed weight used and where it comes from'),
      warning: Told.nullable().describe('such as a weight outside the plausible band'),
    }),
  ),
  'gift.offer': writes(
    'Keeps a gift as offered: for later, with what it waits for, or declined with the reason.',
    {
      donor: WhoIsIt.nullable(),
      offeredOn: Day,
      gift: Gift,
      decision: z.discriminatedUnion('kind', [KeepForLater, Decline]),
    },
    { giftId: Id, personId: Id.nullable() },
  ),
  'gift.record-step': writes(
    'Notes that a waiting gift has passed a step, or has to wait for one.',
    { giftId: Id, ...Wait.shape, done: z.boolean(), on: Day },
    { gift: WaitingGift },
  ),
  'gift.decline': writes(
    'Declines a waiting gift and keeps the reason.',
    { giftId: Id, reason: Line },
    { gift: WaitingGift },
  ),
  'gift.accept': writes(
    'Takes a waiting gift in: an accession and a numbered lot. With steps still open it wants a reason.',
    {
      giftId: Id,
      receivedOn: Day,
      gift: Gift.optional().describe('what has changed since it was offered; left out: as it was offered'),
      reason: z.string().trim().max(500).default('').describe('why it is taken in with steps still open'),
    },
    { taken: TakenIn },
  ),
  'gift.list': reads(
    'Lists gifts that wait, were declined or became accessions, and lots in quarantine, the late ones first.',
    z.strictObject({ state: WaitingGift.shape.state.optional(), donorId: Id.optional() }),
    z.object({
      gifts: z.array(WaitingGift),
      quarantined: z.array(
        z.object({
          ...LotLine,
          reason: Told,
        }),
      ),
    }),
  ),
  'import.preview': reads(
    "Shows how somebody's list of seed (CSV or .xlsx) is understood and what becomes of each row, without writing anything.",
    z.strictObject(List),
    ListPreview,
  ),
  'import.list-refused': reads(
    'Gives the rows of a list that would not come in, as a file with the reason beside each.',
    z.strictObject(List),
    z.object({ fileName: z.string(), csv: z.string(), rows: z.int() }),
  ),
  'import.record': writes(
    "Takes the gifts of somebody's list in, all of them or none: an accession and a numbered lot for each.",
    {
      ...List,
      leaveOut: z.boolean().default(false).describe('that refused rows may be left out'),
    },
    { taken: z.int(), leftOut: z.int(), firstLotId: Id, firstNumber: z.string(), lastNumber: z.string() },
  ),
}
