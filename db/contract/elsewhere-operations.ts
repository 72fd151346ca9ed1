import { z } from 'zod'
import { DUPLICATE_MATTERS } from '../domain/elsewhere/duplicate-due.ts'
import { INSTITUTION_STEPS } from '../domain/elsewhere/open-steps.ts'
import { Day, Id, LotLine, PrintedPdf, pageOf, Quantity, Story, WithdrawalPurpose } from './fields.ts'
import { reads, writes } from './operation.ts'
import { says, Told } from './told.ts'

/** What the holder of a safety duplicate agreed to; a field that nobody filled in is empty. */
const DUPLICATE_TERMS = {
  contact: Story.default('').describe('how the holder is reached'),
  agreement: Story.default('').describe('what was agreed, or where the paper lies'),
  agreementEnds: Day.nullable().default(null),
  conditions: Story.default('').describe('how the seed is kept there'),
  nextLook: Day.nullable().default(null).describe('when somebody looks at it next'),
}
export const DuplicateTerms = z.strictObject(DUPLICATE_TERMS)
export type DuplicateTerms = z.output<typeof DuplicateTerms>

/** What an institution asked for and what went with the seed; a field that nobody filled in is empty. */
const INSTITUTION_TERMS = {
  askedOn: Day.nullable().default(null),
  intendedUse: Story.default('').describe('what they want it for'),
  agreement: Story.default('').describe('which agreement was signed, and when; empty: none yet'),
  plantHealth: Story.default('').describe('papers of plant health that went along, or that none are needed'),
  sentOn: Day.nullable().default(null),
}
export const InstitutionTerms = z.strictObject(INSTITUTION_TERMS)
export type InstitutionTerms = z.output<typeof InstitutionTerms>

const Duplicate = z.object({
  ...LotLine,
  quantity: Quantity,
  holder: z.string(),
  since: z.string(),
  contact: z.string(),
  agreement: z.string(),
  agreementEnds: z.string().nullable(),
  conditions: z.string(),
  nextLook: z.string().nullable(),
  lastTest: z.object({ on: z.string(), tested: z.int(), sprouted: z.int() }).nullable(),
  due: z.array(z.object({ matter: z.enum(DUPLICATE_MATTERS), words: Told })),
})
export type Duplicate = z.infer<typeof Duplicate>

const InstitutionVisit = z.object({
  withdrawalId: Id,
  on: z.string(),
  purpose: WithdrawalPurpose,
  personId: Id.nullable(),
  institution: z.string().describe('empty where it was erased'),
  askedOn: z.string().nullable(),
  intendedUse: z.string(),
  agreement: z.string(),
  plantHealth: z.string(),
  sentOn: z.string().nullable(),
  lots: z.array(z.object({ ...LotLine, words: Told.describe('how much went out') })),
  reports: z.array(z.object({ on: z.string(), note: z.string() })),
  open: z.array(z.object({ step: z.enum(INSTITUTION_STEPS), words: Told })),
})
export type InstitutionVisit = z.infer<typeof InstitutionVisit>

export const elsewhereOperations = {
  'duplicate.list': reads(
    'Lists the safety duplicates that others hold: who, on what terms, and what is due.',
    z.strictObject({ lotId: Id.optional().describe('only this lot') }),
    z.object({
      duplicates: z.array(Duplicate),
      due: z.int().describe('duplicates of which something is due'),
    }),
  ),
  'duplicate.change': writes(
    'Notes what the holder of a safety duplicate agreed to; it stands in place of what was noted before.',
    { lotId: Id, ...DUPLICATE_TERMS },
    {},
  ),
  'duplicate.bring-home': writes(
    'Takes a safety duplicate home: it lies in a place of the library again, and who held it stays in its history.',
    {
      lotId: Id,
      on: Day,
      role: z.enum(['working', 'reserve']),
      placeId: Id,
    },
    {},
  ),
  'institution.list': reads(
    'Lists the hand-outs to institutions, those with something open first.',
    z.strictObject({ personId: Id.optional(), openOnly: z.boolean().default(false), ...pageOf(200, 50) }),
    z.object({ visits: z.array(InstitutionVisit), total: z.int(), open: z.int() }),
  ),
  'institution.change': writes(
    'Notes what belongs to a hand-out to an institution; it stands in place of what was noted before.',
    { withdrawalId: Id, ...INSTITUTION_TERMS },
    {},
  ),
  'institution.record-report': writes(
    'Notes what an institution reported back on seed that it was given.',
    { withdrawalId: Id, on: Day, note: Story.min(1, says('fits.something')) },
    {},
  ),
  'fire-sheet.get': reads(
    'Says when the sheet for a fire was printed last, and whether it is due again.',
    z.strictObject({}),
    z.object({ lastPrinted: z.string().nullable(), due: z.boolean(), whomToCall: z.string() }),
  ),
  'fire-sheet.render': reads(
    'Makes the sheet for a fire: whom to call, and what to carry out first and from where, by what would be lost.',
    z.strictObject({}),
    z.object({ ...PrintedPdf, listed: z.int().describe('places on the sheet') }),
  ),
  'fire-sheet.mark-printed': writes(
    'Notes that the sheet for a fire was printed and hung up.',
    { on: Day },
    { on: Day },
  ),
}
