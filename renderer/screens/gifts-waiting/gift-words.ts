import type { WaitingGift } from '../../../db/contract/intake-operations.ts'
import { CAUTION_WORDS } from '../../../db/domain/cautions/caution-text.ts'

export type Wait = WaitingGift['waitsFor'][number]

/** Which gifts a list shows. */
export type Shown = WaitingGift['state'] | 'all'

/** The dates of a step that is waited for: 'since 3 Nov 2026, due 17 Nov 2026'. */
export function datesInWords(wait: Pick<Wait, 'since' | 'due'>, day: (iso: string) => string): string {
  return wait.due === null ? `since ${day(wait.since)}` : `since ${day(wait.since)}, due ${day(wait.due)}`
}

/** Where a gift stands, on one line of the list. */
export function standingInWords(gift: WaitingGift): string {
  if (gift.state === 'declined') return `declined: ${gift.reason}`
  if (gift.state === 'accepted') return `taken in as ${gift.accessionNumber}`
  if (gift.waitsFor.length === 0) return 'nothing open: can be taken in'
  return `waits for ${gift.waitsFor.map(({ words }) => words).join(' and ')}`
}

/** How many gifts of a donor came to what: '1 waits, 2 taken in'. */
export function outcomeInWords(gifts: readonly WaitingGift[]): string {
  const of = (state: WaitingGift['state']) => gifts.filter((gift) => gift.state === state).length
  const counts = [
    [of('offered'), of('offered') === 1 ? 'waits' : 'wait'],
    [of('accepted'), 'taken in'],
    [of('declined'), 'declined'],
  ] as const
  const said = counts.filter(([count]) => count > 0).map(([count, word]) => `${count} ${word}`)
  return said.length === 0 ? 'no gift that waited' : said.join(', ')
}

export function cautionsInWords({ gift }: WaitingGift): string {
  const words = gift.cautions.map((caution) => CAUTION_WORDS[caution]).join(', ')
  return gift.cautionNote === '' ? words : `${words}: ${gift.cautionNote}`
}
