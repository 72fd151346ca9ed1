import { z } from 'zod'
import { Day, Line } from './fields.ts'

/** What a gift may have to wait for before it is taken in. */
export const WaitingStep = z.enum(['identity', 'drying', 'freezing', 'test', 'legal', 'other'])
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
