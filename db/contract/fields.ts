import { z } from 'zod'
import { COUNTED_UNITS } from '../domain/crops/counted-unit.ts'
import { isIsoDate } from '../domain/dates/iso-date.ts'
import { NEED_STATES } from '../domain/needs/need.ts'
import { POPULATION_GOALS } from '../domain/needs/population-goal.ts'
import {
  CAUTION_KINDS,
  LOT_BASES,
  LOT_ROLES,
  MEASURED_OR_CARRIED,
  MOVEMENT_KINDS,
  PERSON_ROLES,
  WITHDRAWAL_PURPOSES,
} from '../domain/shared/closed-sets.ts'
import { LANGUAGE_CODES } from '../messages/languages.ts'
import { says, Told } from './told.ts'

/** A calendar date. */
export const Day = z.string().refine(isIsoDate, says('fits.date')).describe('a calendar date, YYYY-MM-DD')

export const Id = z.int().min(1)

/** Which crop: of the table or the keeper's own. */
export const CropId = z.string().max(60)

/** A name or a line of text: trimmed, not empty, something to be seen in it. */
export const Line = z
  .string()
  .trim()
  .min(1, says('fits.something'))
  .max(200, says('fits.under-200'))
  .refine(
    (text) => text === '' || /[\p{L}\p{N}\p{P}\p{S}]/u.test(text),
    'Nothing of that can be seen. Type something here.',
  )

/** Free text such as a story or a note; may be empty. */
export const Story = z.string().trim().max(20_000, says('fits.under-20000'))

/** An amount with its unit, as typed: '12.5 g', '30 seeds', '3 packets of 25', 'about 200'. */
export const TypedAmount = z
  .string()
  .max(100, says('fits.amount-too-long'))
  .describe("an amount with its unit: '12.5 g', '30 seeds', '3 packets of 25', 'about 200'")

export const LotRole = z.enum(LOT_ROLES)
export type LotRole = z.infer<typeof LotRole>

export const LotBasis = z.enum(LOT_BASES)

export const Caution = z.enum(CAUTION_KINDS)
export type Caution = z.infer<typeof Caution>

export const WithdrawalPurpose = z.enum(WITHDRAWAL_PURPOSES)
export type WithdrawalPurpose = z.infer<typeof WithdrawalPurpose>

export const MovementKind = z.enum(MOVEMENT_KINDS)

export const Measured = z.enum(MEASURED_OR_CARRIED)

/** How sure a regrowing is to make its plants. */
export const Assurance = z
  .number()
  .min(0.5)
  .max(0.99)
  .describe('chance that a regrowing makes all its plants, by which seed is sown and kept')

export const NeedState = z.enum(NEED_STATES)

/** What a regrowing is for: sound seed, the variety as it is, or its rarer traits as well. */
export const PopulationGoal = z.enum(POPULATION_GOALS)

/** Both numbers of an amount of seed, with how far the derived one is to be trusted. */
export const Quantity = z.object({
  count: z.int().describe('seeds, or the counted unit of the crop'),
  massMg: z.int().describe('milligrams'),
  weighed: z.boolean().describe('whether the mass was measured and the count follows from it'),
  countDoubt: z.number().describe('relative doubt of the count, about 95 %; 0 when counted'),
  words: Told.describe("'about 1,240 seeds, 31.2 g'"),
})
export type Quantity = z.infer<typeof Quantity>

/** What names a lot. */
export const LotName = { lotId: Id, lotNumber: z.string() }

/** A lot as lists name it. */
export const LotLine = { ...LotName, variety: z.string(), crop: z.string() }

/** An accession as lists name it. */
export const AccessionLine = {
  accessionId: Id,
  accessionNumber: z.string(),
  variety: z.string(),
  crop: z.string(),
}

/** What a crop's seed is counted in. */
export const CountedUnit = z.object({ one: z.enum(COUNTED_UNITS), many: z.string() })

/** Which part of a longer list: after so many, and so many at most. */
export function pageOf(most: number, usual: number) {
  return { offset: z.int().min(0).default(0), limit: z.int().min(1).max(most).default(usual) }
}

/** A document that was made. */
export const PrintedPdf = {
  pdf: z.string().describe('the PDF, base64'),
  fileName: z.string(),
  pages: z.int(),
  warnings: z.array(Told).describe('what could not be printed as asked'),
}

/** Living seeds against what must be kept, as drawn in the seed bar. */
export const LivingStock = z.object({
  living: z.int(),
  low: z.int().describe('with high: a band that holds the truth at least nine times in ten'),
  high: z.int(),
  total: z.int(),
  keep: z.int(),
  unit: z.string().describe('the counted unit in the plural'),
  state: NeedState,
  sentence: Told,
  reasons: z.array(Told),
  arithmetic: z.array(Told),
  viabilityNotes: z.array(Told).describe('where the part alive comes from: the last test, or an assumption'),
})
export type LivingStock = z.infer<typeof LivingStock>

export const Search = z.strictObject({ text: z.string().max(200), limit: z.int().min(1).max(50).default(10) })

export const PersonRole = z.enum(PERSON_ROLES)
export type PersonRole = z.infer<typeof PersonRole>

/** What is known of a person, field by field. */
export const PersonFacts = {
  name: Line,
  town: Line.or(z.literal('')),
  creditAs: Line.or(z.literal('')).describe('how they wish to be named on packets; empty: not named'),
  email: z.email('That does not look like an e-mail address.').or(z.literal('')),
  phone: z.string().trim().max(40),
  address: z.string().trim().max(500),
  mayWrite: z.boolean().describe('they agreed to be written to'),
  note: Story,
  language: z
    .enum(LANGUAGE_CODES)
    .or(z.literal(''))
    .describe('what is written to them in; empty: the library’s language'),
}

/** How a person is reached and named. */
export const PersonShown = {
  personId: Id,
  name: z.string(),
  town: z.string(),
  creditAs: z.string(),
  email: z.string(),
  phone: z.string(),
  address: z.string(),
  note: z.string(),
  language: z.enum(LANGUAGE_CODES).or(z.literal('')),
}

/** A new person: only the name is needed. */
export const PersonFields = {
  name: PersonFacts.name,
  town: PersonFacts.town.default(''),
  creditAs: PersonFacts.creditAs.default(''),
  email: PersonFacts.email.default(''),
  phone: PersonFacts.phone.default(''),
  address: PersonFacts.address.default(''),
  mayWrite: PersonFacts.mayWrite.default(false),
  note: PersonFacts.note.default(''),
  language: PersonFacts.language.default(''),
}

/** Somebody already known, or a new person made in the same step. */
export const WhoIsIt = z.union([
  z.strictObject({ personId: Id }),
  z.strictObject({ newPerson: z.strictObject(PersonFields) }),
])
