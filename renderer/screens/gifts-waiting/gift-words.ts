import type { WaitingGift } from '../../../db/contract/intake-operations.ts'
import { cautionName } from '../../../db/domain/cautions/caution-text.ts'
import { type Listed, type Message, message } from '../../../db/messages/message.ts'
import type { Texts } from '../../../db/messages/texts.ts'

export type Wait = WaitingGift['waitsFor'][number]

/** Which gifts a list shows. */
export type Shown = WaitingGift['state'] | 'all'

/** The dates of a step that is waited for: 'since 3 Nov 2026, due 17 Nov 2026'. */
export function datesOf({ since, due }: Pick<Wait, 'since' | 'due'>): Message {
  return due === null
    ? message('gifts.step.since', { since: { day: since } })
    : message('gifts.step.due', { since: { day: since }, due: { day: due } })
}

/** Where a gift stands, on one line of the list. */
export function standingOf(gift: WaitingGift): Message {
  if (gift.state === 'declined') return message('gifts.standing.declined', { reason: gift.reason })
  if (gift.state === 'accepted') return message('gifts.standing.taken-in', { number: gift.accessionNumber })
  if (gift.waitsFor.length === 0) return message('gifts.standing.nothing-open')
  return message('gifts.standing.waits', { steps: stepsOf(gift) })
}

/** What a gift waits for, one after the other. */
export function stepsOf({ waitsFor }: WaitingGift): Listed {
  return { list: waitsFor.map(({ words }) => words) }
}

/** How many gifts of a donor came to what: '1 waits, 2 taken in and 3 taken in at the table'. */
export function outcomeOf(gifts: readonly WaitingGift[], atTable: number): Listed {
  const of = (state: WaitingGift['state']) => gifts.filter((gift) => gift.state === state).length
  const waited = [
    { id: 'gifts.outcome-waits', count: of('offered') },
    { id: 'gifts.outcome-taken-in', count: of('accepted') },
    { id: 'gifts.outcome-declined', count: of('declined') },
  ] as const
  const came = waited.filter(({ count }) => count > 0).map(({ id, count }) => message(id, { count }))
  return {
    list: [
      ...(came.length === 0 ? [message('gifts.outcome-none')] : came),
      ...(atTable === 0 ? [] : [message('gifts.outcome-at-table', { count: atTable })]),
    ],
  }
}

/** Who gave it, also where nobody knows. */
export function donorOf({ donor }: WaitingGift): Message | string {
  return donor === '' ? message('gifts.somebody-unknown') : donor
}

export function cautionsInWords({ gift }: WaitingGift, say: Texts['say']): string {
  const words = gift.cautions.map((caution) => say(cautionName(caution))).join(', ')
  return gift.cautionNote === '' ? words : `${words}: ${gift.cautionNote}`
}
