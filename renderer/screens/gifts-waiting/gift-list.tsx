import type { KeyboardEvent } from 'react'
import { Link } from 'wouter'
import type { WaitingGift } from '../../../db/contract/waiting-operations.ts'
import { giftAddress } from './gift-address.ts'
import { standingInWords } from './gift-words.ts'

interface GiftListProps {
  readonly gifts: readonly WaitingGift[]
  readonly chosen: number | null
  /** An arrow led to a gift: its card opens, the focus stays in the list. */
  readonly onArrow: (giftId: number) => void
  /** Enter or a click: its card opens and takes the focus. */
  readonly onOpen: (giftId: number) => void
}

/** Gifts, the late ones first: arrows go through them, Enter goes to the card. */
export function GiftList({ gifts, chosen, onArrow, onOpen }: GiftListProps) {
  const onKeyDown = (event: KeyboardEvent<HTMLUListElement>) => {
    if (event.key === 'Enter' && event.target instanceof HTMLAnchorElement) {
      // The same key press must not fire the button on the card that takes the focus.
      event.preventDefault()
      return event.target.click()
    }
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key]
    const links = [...event.currentTarget.querySelectorAll<HTMLElement>('a')]
    const at = by === undefined ? -1 : links.indexOf(event.target as HTMLElement) + by
    const next = gifts[at]
    if (by === undefined || next === undefined) return
    event.preventDefault()
    links[at]?.focus()
    onArrow(next.giftId)
  }
  return (
    <ul className="pane-rows" onKeyDown={onKeyDown}>
      {gifts.map((gift) => (
        <li key={gift.giftId}>
          <Link
            href={giftAddress(gift.giftId)}
            className="pane-row"
            {...(gift.giftId === chosen ? { 'aria-current': 'true' as const } : {})}
            onClick={() => onOpen(gift.giftId)}
          >
            <span className="pane-row-name">{gift.variety}</span>
            <span className="pane-row-from">
              {gift.crop} · from {gift.donor === '' ? 'somebody unknown' : gift.donor}
            </span>
            <span>
              {gift.waitsFor.some(({ late }) => late) && <strong className="late-mark">late</strong>}
              {standingInWords(gift)}
            </span>
          </Link>
        </li>
      ))}
    </ul>
  )
}
