import { z } from 'zod'
import {
  CountedUnit,
  Day,
  Id,
  Line,
  LivingStock,
  LotLine,
  PrintedPdf,
  pageOf,
  Quantity,
  Story,
} from './fields.ts'
import { reads, writes } from './operation.ts'
import { says, Told } from './told.ts'

const Seeds = z.int().min(0, says('fits.from-zero')).max(10_000, says('fits.replicate-too-large'))

/** Seeds of one replicate by category, as they were taken out at one count. */
export const Tally = z.strictObject({
  normal: Seeds.default(0).describe('normal seedlings'),
  abnormal: Seeds.default(0).describe('seedlings that would make no plant'),
  hard: Seeds.default(0).describe('took no water up'),
  fresh: Seeds.default(0).describe('took water up, sound, did not germinate: dormant'),
  dead: Seeds.default(0),
})
export type Tally = z.infer<typeof Tally>

/** Which seed that did not germinate the keeper counts as alive. */
const CountingChoice = z.strictObject({ hard: z.boolean(), fresh: z.boolean() })
const Part = z.number().min(0).max(1)
const Threshold = z.number().min(0.05).max(0.99)

const FromStock = z.boolean().default(true).describe('the seeds leave the stock of the lot')

const TestDue = z.object({
  on: z.string(),
  which: z.enum(['first', 'final']),
  when: z.enum(['late', 'today', 'later']),
})

const TestState = z.enum(['under-way', 'finished', 'cancelled'])

export const TestLine = z.object({
  testId: Id,
  ...LotLine,
  state: TestState,
  startedOn: z.string().nullable(),
  sown: z.int(),
  replicates: z.int(),
  normal: z.int().describe('normal seedlings so far'),
  due: TestDue.nullable().describe('the next count; null once it is over'),
  words: Told.describe('the result, or why it was given up; empty while it is under way'),
})
export type TestLine = z.infer<typeof TestLine>

/** Tests of a lot that are stages of one, added up. */
const StagesSum = z.object({
  stages: z.int(),
  tested: z.int(),
  germinated: z.int(),
  decision: z.enum(['regrow', 'keep', 'go-on', 'undecided']),
  words: Told,
})

const TestResult = z.object({
  germinated: z.int().describe("seeds counted as alive, by the keeper's choice"),
  tested: z.int(),
  tally: Tally,
  unsorted: z.int().describe('seeds that nobody sorted; counted as not germinated'),
  wilson: z.tuple([Part, Part]).describe('95 % interval after Wilson'),
  exact: z.tuple([Part, Part]).describe('95 % interval after Clopper and Pearson'),
  threshold: Part,
  chanceAbove: Part.describe('the probability that the part alive was at least the threshold on the day'),
  chanceFrom: z
    .enum(['forecast', 'test'])
    .describe('whether that is by the forecast of the lot, or by the test alone where there is none'),
  words: Told,
  choiceWords: Told.describe('how hard and dormant seed was counted; empty where there was none'),
  tolerance: z.object({ kind: z.enum(['within', 'outside', 'not-judged']), words: Told }),
  speed: z.object({ meanDays: z.number(), halfDays: z.number().nullable(), words: Told }).nullable(),
})

export const TestRecord = TestLine.omit({ replicates: true, words: true }).extend({
  unit: CountedUnit,
  medium: z.string(),
  temperature: z.string(),
  firstDay: z.int().nullable(),
  finalDay: z.int().nullable(),
  fromStock: z.boolean(),
  note: z.string(),
  cautions: z.array(Told),
  replicates: z.array(z.object({ sown: z.int(), tally: Tally })),
  counts: z.array(
    z.object({ on: z.string(), day: z.int().nullable(), entryId: Id, replicates: z.array(Tally) }),
  ),
  curve: z
    .array(z.object({ day: z.int(), germinated: z.int() }))
    .describe('normal seedlings added up by day'),
  choice: CountingChoice.describe('as the result was counted, or as was asked for'),
  result: TestResult.nullable().describe(
    'what the counts would come to if the test ended now; null before the first',
  ),
  staged: StagesSum.nullable().describe('the stages that are over, up to this test; null: it is no stage'),
  followedBy: Id.nullable().describe('the test that is its next stage'),
  finished: z.object({ on: z.string(), note: z.string(), entryId: Id }).nullable(),
  cancelled: z.object({ on: z.string(), reason: z.string(), seedsBack: z.boolean() }).nullable(),
})
export type TestRecord = z.infer<typeof TestRecord>

const TestSize = z.object({
  seeds: z.int(),
  decides: Part.describe('the chance that it tells surely on which side of the threshold the lot is'),
  sureAboveFrom: z.int().nullable(),
  sureBelowTo: z.int().nullable(),
})

export const TestPlan = z.object({
  ...LotLine,
  unit: CountedUnit,
  available: z.int(),
  cautions: z.array(Told),
  conditions: z.object({
    temperature: Told,
    media: z.array(Told),
    firstDay: z.int().nullable(),
    finalDay: z.int(),
    finalDayNote: Told.describe(
      'what to know of the last day; empty where it is of the source of the other conditions',
    ),
    notes: z.string().describe('what the table adds, such as how dormancy is broken; may be empty'),
    hardSeedPossible: z.boolean(),
    source: Told,
    confidence: Told,
  }),
  layout: z
    .array(z.int())
    .describe('seeds of each replicate that is suggested; empty where the lot has none'),
  threshold: Part,
  expected: Part,
  expectedNote: Told.describe('where the expected part comes from'),
  smallest: TestSize.nullable(),
  sizes: z.array(TestSize),
  words: Told.describe('the advice in a sentence or two'),
  follows: StagesSum.extend({ testId: Id, on: z.string(), groupSize: z.int() })
    .nullable()
    .describe('the latest test, where a next stage of it may decide; null: there is none'),
  staged: z.object({
    groupSize: z.int(),
    published: z.boolean(),
    stages: z.array(
      z.object({
        tested: z.int(),
        regrowAtMost: z.int().nullable(),
        keepAtLeast: z.int().nullable(),
        confidence: Told.describe('how far its source is to be trusted'),
      }),
    ),
    outcomes: z.array(
      z.object({
        alive: Part.describe('if this part is really alive'),
        regrow: Part,
        keep: Part,
        undecided: Part,
        seeds: z.number().describe('seeds spent on average'),
      }),
    ),
  }),
})
export type TestPlan = z.infer<typeof TestPlan>

const Due = z.object({
  ...LotLine,
  place: z.string(),
  quantity: Quantity,
  on: z.string(),
  late: z.boolean(),
  because: Told,
  source: Told,
  confidence: Told,
  underTest: z.boolean().describe('a test of it is under way'),
})
export type DueTest = z.infer<typeof Due>

export const germinationOperations = {
  'germination.plan': reads(
    'Suggests how to test a lot: conditions from the crop table, how many seeds to spend, and a test in stages.',
    z.strictObject({
      lotId: Id,
      threshold: Threshold.optional().describe("left out: the lot's own"),
      expected: Part.optional().describe('the part thought to be alive; left out: the last result'),
      groupSize: z.int().min(5).max(100).optional().describe('seeds of one stage'),
    }),
    TestPlan,
  ),
  'germination.start': writes(
    'Begins a germination test: the seeds of its replicates leave the stock.',
    {
      lotId: Id,
      on: Day,
      replicates: z
        .array(z.int().min(1, says('fits.one-seed')).max(10_000))
        .min(1, says('fits.one-replicate'))
        .max(16, says('fits.most-replicates'))
        .describe('seeds of each'),
      medium: z.string().trim().max(200).default(''),
      temperature: z.string().trim().max(200).default(''),
      firstDay: z.int().min(1).max(400).nullable().default(null).describe('days to the first count'),
      finalDay: z.int().min(1, says('fits.last-count-from')).max(400, says('fits.last-count-until')),
      fromStock: FromStock,
      followsTestId: Id.nullable().default(null).describe('the test whose next stage it is'),
      note: Story.default(''),
    },
    { testId: Id, due: TestDue, left: Quantity },
  ),
  'germination.record-count': writes(
    'Writes down what was taken out of each replicate on a day; a second count of one day takes the place of the first.',
    { testId: Id, on: Day, replicates: z.array(Tally).min(1).max(16) },
    { test: TestRecord },
  ),
  'germination.finish': writes(
    'Ends a test and puts its result in force, counting hard and dormant seed as the keeper chooses.',
    {
      testId: Id,
      on: Day,
      choice: CountingChoice.default({ hard: false, fresh: false }),
      note: Story.default(''),
    },
    { words: Told, test: TestRecord, stock: LivingStock },
  ),
  'germination.cancel': writes(
    'Gives a test up, with the reason; seeds that stayed dry go back into the stock.',
    { testId: Id, on: Day, reason: Line, seedsBack: z.boolean().default(false) },
    { left: Quantity },
  ),
  'germination.record': writes(
    'Records a test that is over in one go, such as twenty seeds in a paper towel.',
    {
      lotId: Id,
      on: Day,
      startedOn: Day.nullable().default(null).describe('null where nobody wrote it down'),
      tested: z.int().min(1).max(10_000),
      sprouted: z.int().min(0).max(10_000),
      fromStock: FromStock,
      note: Story.default(''),
    },
    { testId: Id, words: Told, stock: LivingStock },
  ),
  'germination.list': reads(
    'Lists tests: those under way, the one to be counted next first; or those over, the latest first.',
    z.strictObject({
      state: TestState.default('under-way'),
      lotId: Id.optional(),
      ...pageOf(500, 100),
    }),
    z.object({ tests: z.array(TestLine), total: z.int(), toCount: z.int().describe('late or due today') }),
  ),
  'germination.get': reads(
    'Shows a test with its counts, and what they come to in plain words.',
    z.strictObject({
      testId: Id,
      choice: CountingChoice.optional().describe(
        'how to count hard and dormant seed, to see what it changes',
      ),
    }),
    TestRecord,
  ),
  'germination.list-due': reads(
    'Lists which lots should be tested next, by the published rules and the forecast, whichever is sooner.',
    z.strictObject({
      withinDays: z.int().min(0).max(20_000).default(90),
      ...pageOf(500, 100),
    }),
    z.object({ lots: z.array(Due), total: z.int(), late: z.int() }),
  ),
  'germination.print': reads(
    'Makes the bench sheet of tests under way: a page to write counts on.',
    z.strictObject({ testIds: z.array(Id).max(100).default([]).describe('none named: all under way') }),
    z.object(PrintedPdf),
  ),
}
