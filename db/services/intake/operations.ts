import type { Handlers } from '../book/context.ts'
import { recordIntake } from './intake.ts'
import { checkReturn, listReturnsToCheck } from './return-checks.ts'
import { previewReturn, recordReturn } from './returns.ts'
import { acceptGift, declineGift, listGifts, noteStep, offerGift } from './waiting-gifts.ts'

/** The operations that this room answers. */
export const intakeOperations = {
  'gift.list': listGifts,
  'intake.record': recordIntake,
  'return.record': recordReturn,
  'return.preview': previewReturn,
  'return.check': checkReturn,
  'return.list-to-check': listReturnsToCheck,
  'gift.offer': offerGift,
  'gift.record-step': noteStep,
  'gift.decline': declineGift,
  'gift.accept': acceptGift,
} satisfies Partial<Handlers>
