import { z } from 'zod'
import { RETURN_QUESTIONS } from '../domain/intake/check-return.ts'
import {
  CHECK_OUTCOMES,
  COMPARED_WITH,
  FLOWERED_NEAR,
  YES_NO_NOT_KNOWN,
} from '../domain/shared/closed-sets.ts'
import { Day, Id, LotLine, Story } from './fields.ts'
import { reads, writes } from './operation.ts'
import { Told } from './told.ts'

/** What is answered at the table of seed that comes back. */
export const ReturnAnswers = {
  plantsGrown: z
    .int()
    .min(1)
    .max(1_000_000)
    .nullable()
    .default(null)
    .describe('plants that it was saved from'),
  floweredNear: z.enum(FLOWERED_NEAR).default('not-known').describe('what of its kind flowered near'),
  nearNote: z.string().trim().max(500).default('').describe('what it was, or how it was kept apart'),
  odd: z.string().trim().max(500).default('').describe('anything unlike the rest, sick or wet'),
}

const Found = z.enum(YES_NO_NOT_KNOWN).default('not-known')

/** How a lot came back, and what was found of it since. */
export const CameBack = z.object({
  on: z.string(),
  answers: z.array(Told).describe('what was answered at the table'),
  checks: z.array(Told).describe('what was found of it, latest first'),
})
export type CameBack = z.infer<typeof CameBack>

export const returnOperations = {
  'return.preview': reads(
    'Says what is asked of seed grown from a lot, and why it will wait to be checked, without writing anything.',
    z.strictObject({ parentLotId: Id, ...ReturnAnswers }),
    z.object({
      questions: z.array(z.enum(RETURN_QUESTIONS)),
      waits: z.array(Told).describe('why it will wait to be checked; empty: it will not'),
    }),
  ),
  'return.check': writes(
    'Says how a return or a harvest was found: it is kept, passed on as perhaps not true to type, or waits on.',
    {
      lotId: Id,
      on: Day,
      dry: Found,
      clean: Found,
      trueToType: Found,
      comparedWith: z.enum(COMPARED_WITH).default('nothing'),
      outcome: z.enum(CHECK_OUTCOMES),
      note: Story.default(''),
    },
    {},
  ),
  'return.list-to-check': reads(
    'Lists returns and harvests that wait to be checked, those that wait longest first.',
    z.strictObject({}),
    z.object({
      returns: z.array(
        z.object({
          ...LotLine,
          person: z.string(),
          reason: Told.describe('why it waits'),
          ...CameBack.shape,
        }),
      ),
    }),
  ),
}
