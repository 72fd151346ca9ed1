import { type Message, message } from '../../messages/message.ts'
import type { IsoDate } from '../dates/iso-date.ts'
import { assertNever } from '../shared/assert-never.ts'

/** What a gift may have to wait for before it is taken in. */
export type Waiting = 'identity' | 'drying' | 'freezing' | 'test' | 'legal' | 'other'

/** What happened to a gift that was offered, oldest first. */
export type GiftEvent =
  | {
      readonly kind: 'waits-for'
      readonly step: Waiting
      readonly on: IsoDate
      readonly due: IsoDate | null
      readonly note: string
    }
  | { readonly kind: 'step-done'; readonly step: Waiting; readonly on: IsoDate; readonly note: string }
  | { readonly kind: 'declined'; readonly on: IsoDate; readonly note: string }
  | { readonly kind: 'accepted'; readonly on: IsoDate }

/** Where a gift stands. */
export interface GiftStanding {
  readonly state: 'offered' | 'declined' | 'accepted'
  readonly reason: string
  readonly waitsFor: readonly Extract<GiftEvent, { kind: 'waits-for' }>[]
  readonly done: readonly Extract<GiftEvent, { kind: 'step-done' }>[]
}

/** Where a gift stands after all that happened to it. A step that is waited for again is open again. */
export function giftStanding(events: readonly GiftEvent[]): GiftStanding {
  const open = new Map<Waiting, Extract<GiftEvent, { kind: 'waits-for' }>>()
  const done = new Map<Waiting, Extract<GiftEvent, { kind: 'step-done' }>>()
  let state: GiftStanding['state'] = 'offered'
  let reason = ''
  for (const event of events) {
    switch (event.kind) {
      case 'waits-for':
        open.set(event.step, event)
        done.delete(event.step)
        break
      case 'step-done':
        open.delete(event.step)
        done.set(event.step, event)
        break
      case 'declined':
        state = 'declined'
        reason = event.note
        break
      case 'accepted':
        state = 'accepted'
        break
      default:
        assertNever(event, 'A gift event has no meaning yet')
    }
  }
  return { state, reason, waitsFor: state === 'offered' ? [...open.values()] : [], done: [...done.values()] }
}

/** Whether a step should have been done by today. */
export function isLate(wait: { readonly due: IsoDate | null }, today: IsoDate): boolean {
  return wait.due !== null && wait.due < today
}

/** What is being waited for. */
export function waitingTold(step: Waiting): Message {
  return message(`waiting.${step}`)
}

/**
 * The usual caution for a step; null where there is none.
 *
 * Moisture before freezing: FAO Genebank Standards as taught (seen); warming closed: from memory.
 * Coloured gel: cobalt chloride is toxic (seen). Local rules decide.
 */
export function waitingCaution(step: Waiting): Message | null {
  switch (step) {
    case 'freezing':
    case 'drying':
    case 'legal':
      return message(`waiting.caution-${step}`)
    case 'identity':
    case 'test':
    case 'other':
      return null
    default:
      return assertNever(step, 'A step has no caution yet')
  }
}
