import { z } from 'zod'
import { AFFECTED, LOT_RELATIONS, RECALL_OUTCOMES } from '../domain/shared/closed-sets.ts'
import { KINSHIPS } from '../domain/trace/trace.ts'
import { Day, Id, Line, LotLine, LotName, LotRole, PrintedPdf, Quantity, Story } from './fields.ts'
import { reads, writes } from './operation.ts'
import { says, Told } from './told.ts'

const Affected = z.enum(AFFECTED).describe('of perhaps affected seed nothing is known yet')
const Outcome = z.enum(RECALL_OUTCOMES)

/** How many lots a recall takes in at most. */
const MOST_LOTS = 500

const HeldLot = z.object({
  ...LotName,
  role: LotRole,
  harvest: Told,
  quantity: Quantity,
  quarantined: z.boolean(),
  heldBy: z.string().describe('who holds it, where it lies elsewhere'),
  affected: Affected,
})

export const TracedLot = HeldLot.extend({ kin: z.enum(KINSHIPS) })
export type TracedLot = z.infer<typeof TracedLot>

const Taken = z.object({ ...LotLine, affected: Affected, on: z.string(), words: Told })

const Taker = z.object({
  personId: Id,
  name: z.string(),
  town: z.string(),
  mayWrite: z.boolean().describe('they agreed to be written to'),
  had: z.array(Taken),
})

/** Who got seed of some lots. */
const WhoHasSome = {
  people: z.array(Taker),
  nameless: z.array(Taken).describe('what went out to somebody whose name is not known'),
}

/** How those who have some can be told. */
const HowMany = {
  toWrite: z.int().describe('people who agreed to be written to'),
  inPerson: z.int().describe('people who did not: to be asked when they are seen'),
}

const Cause = {
  ...LotLine,
  on: z.string(),
  reason: z.string(),
}

const OneOutcome = z.object({ outcomeId: Id, outcome: Outcome, on: z.string(), note: z.string() })
const Outcomes = { outcomes: z.array(OneOutcome).describe('what came of it, oldest first') }

/** The lot where something was found, and those chosen to go with it. */
const Chosen = {
  lotId: Id.describe('the lot where something was found'),
  lotIds: z.array(Id).max(MOST_LOTS).default([]).describe('which of its trace go with it'),
}

const OfRecall = z.strictObject({ recallId: Id })

export const recallOperations = {
  'lot.trace': reads(
    'Shows all lots that hang together with one: what it came from, the same seed, its offspring, and who has some.',
    z.strictObject({ lotId: Id }),
    z.object({
      ...LotLine,
      lots: z.array(TracedLot).describe('the lot itself first'),
      steps: z
        .array(z.object({ fromLotId: Id, toLotId: Id, by: z.enum(LOT_RELATIONS) }))
        .describe('how seed went from one to another, oldest first'),
      ...WhoHasSome,
    }),
  ),
  'recall.preview': reads(
    'Says which lots a recall would put into quarantine and whom there is to tell, without writing anything.',
    z.strictObject(Chosen),
    z.object({ lots: z.array(HeldLot), ...WhoHasSome, ...HowMany }),
  ),
  'recall.record': writes(
    'Recalls a lot: puts it and what was chosen to go with it into quarantine as one entry, with the reason and what to do.',
    {
      ...Chosen,
      on: Day,
      reason: Line,
      advice: Story.min(1, says('fits.something')).describe('what whoever has some is asked to do'),
    },
    { recallId: Id, lots: z.int().describe('lots in quarantine by it') },
  ),
  'recall.list': reads(
    'Lists recalls, latest first: all of them, or those that took a lot in.',
    z.strictObject({ lotId: Id.optional() }),
    z.object({
      recalls: z.array(z.object({ recallId: Id, ...Cause, lots: z.int() })),
    }),
  ),
  'recall.get': reads(
    'Shows a recall: its lots as they are now, who has some, and what came of it.',
    OfRecall,
    z.object({
      recallId: Id,
      ...Cause,
      advice: z.string(),
      lots: z.array(HeldLot.extend(Outcomes)),
      people: z.array(Taker.extend(Outcomes)),
      nameless: WhoHasSome.nameless,
      ...HowMany,
      ...Outcomes,
    }),
  ),
  'recall.record-outcome': writes(
    'Keeps what came of a recall: for one of its lots, for somebody who has some, or as a whole.',
    {
      recallId: Id,
      of: z.union([z.strictObject({ lotId: Id }), z.strictObject({ personId: Id }), z.literal('the-whole')]),
      outcome: Outcome,
      on: Day,
      note: Story.default(''),
    },
    { outcomeId: Id },
  ),
  'recall.export': reads(
    'Writes whom to tell of a recall as a CSV file for a spreadsheet: only those who agreed to be written to.',
    OfRecall,
    z.object({
      fileName: z.string(),
      csv: z.string().describe('RFC 4180, in UTF-8 with a byte order mark'),
      ...HowMany,
    }),
  ),
  'recall.render-letters': reads(
    'Makes a letter to each who has recalled seed and agreed to be written to, in their language.',
    OfRecall,
    z.object({ ...PrintedPdf, ...HowMany }),
  ),
}
