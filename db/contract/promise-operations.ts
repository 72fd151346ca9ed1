import { z } from 'zod'
import { PROMISE_STATES } from '../domain/promises/promise.ts'
import { Id, Line, WithdrawalPurpose } from './fields.ts'
import { reads, writes } from './operation.ts'

export const SeedPromise = z.object({
  words: z.string().describe('what they mean to bring back, in their words'),
  by: z.string().nullable().describe('the day by which; null where none was named'),
  state: z.enum(PROMISE_STATES),
  waiverReason: z.string().describe('why it is no longer waited for; empty while it is'),
})
export type SeedPromise = z.infer<typeof SeedPromise>

const LotOut = z.object({
  lotId: Id,
  lotNumber: z.string(),
  variety: z.string(),
  crop: z.string(),
  words: z.string().describe('how much went out'),
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
  back: z
    .array(z.object({ lotId: Id, lotNumber: z.string(), on: z.string() }))
    .describe('lots that came back of it'),
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

export const promiseOperations = {
  'withdrawal.list-open': reads(
    'Lists the visits on which a person took seed: what is still promised first, overdue before the rest.',
    z.strictObject({ personId: Id, limit: z.int().min(1).max(200).default(50) }),
    z.object({ visits: z.array(VisitOut), total: z.int() }),
  ),
  'promise.list': reads(
    'Lists promises that are still waited for: who promised what by when, overdue first.',
    z.strictObject({
      overdueOnly: z.boolean().default(false),
      offset: z.int().min(0).default(0),
      limit: z.int().min(1).max(200).default(50),
    }),
    z.object({ promises: z.array(Reminder), total: z.int(), overdue: z.int() }),
  ),
  'promise.waive': writes(
    'Stops waiting for what was promised on a visit, with the reason.',
    { withdrawalId: Id, reason: Line },
    {},
  ),
} as const
