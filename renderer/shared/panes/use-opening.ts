import { type RefObject, useCallback, useEffect, useState } from 'react'
import { useLocation } from 'wouter'
import { focusIsFree } from '../focus/lost-focus.ts'

interface Wanted {
  readonly address: string
  /** Where the focus was when the card was asked for. */
  readonly from: Element | null
}

/**
 * Takes the focus to a card that was asked for, once it stands on the page; not where the keeper has gone on meanwhile.
 * Answers what asks for the card of an address.
 */
export function useOpening(card: RefObject<HTMLElement | null>): (address: string) => void {
  const [here] = useLocation()
  const [wanted, setWanted] = useState<Wanted | null>(null)
  useEffect(() => {
    const right = card.current
    if (wanted === null || wanted.address !== here || right === null) return
    const focus = () => {
      if (right.querySelector('h2') === null) return false
      if (focusIsFree() || document.activeElement === wanted.from) focusNext(right)
      setWanted(null)
      return true
    }
    if (focus()) return
    const watch = new MutationObserver(focus)
    watch.observe(right, { childList: true, subtree: true })
    return () => watch.disconnect()
  }, [card, wanted, here])
  return useCallback((address) => setWanted({ address, from: document.activeElement }), [])
}

/** Focuses what is to be done next on a card: what is marked so or its first field, or else the card's heading. */
export function focusNext(card: HTMLElement | null): void {
  const next = card?.querySelector<HTMLElement>(
    ':is(input, button)[data-next]:not(:disabled), [data-next] :is(input, button):not(:disabled)',
  )
  ;(next ?? card?.querySelector<HTMLElement>('h2'))?.focus()
}
