import { z } from 'zod'
import { Day, Id, Line } from './fields.ts'
import { Decline, KeepForLater, Wait, WaitingStep } from './gift-decision.ts'
import { Gift, TakenIn, WhoIsIt } from './intake-operations.ts'
import { reads, writes } from './operation.ts'

const OpenWait = z.object({
  step: WaitingStep,
  words: z.string().describe('what is being waited for, in words'),
  since: z.string(),
  due: z.string().nullable(),
  late: z.boolean(),
  note: z.string(),
  caution: z.string().describe('the usual caution for this step; may be empty'),
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
  done: z.array(z.object({ step: WaitingStep, words: z.string(), on: z.string(), note: z.string() })),
  accessionNumber: z.string().describe('once taken in'),
  lotId: Id.nullable().describe('the lot it became'),
  gift: Gift,
})
export type WaitingGift = z.infer<typeof WaitingGift>

export const waitingOperations = {
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
          lotId: Id,
          lotNumber: z.string(),
          variety: z.string(),
          crop: z.string(),
          reason: z.string(),
        }),
      ),
    }),
  ),
} as const
