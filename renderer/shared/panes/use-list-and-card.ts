import { useEffect, useRef } from 'react'
import { useLocation } from 'wouter'
import { useOpening } from './use-opening.ts'

/**
 * A list with a card beside it: where the card stands, and what asks for the card of an address. While none is open,
 * `first` is opened, the address of the first of the list.
 */
export function useListAndCard(isOpen: boolean, first: string | undefined) {
  const card = useRef<HTMLElement>(null)
  const openCard = useOpening(card)
  const [, go] = useLocation()
  useEffect(() => {
    if (!isOpen && first !== undefined) go(first, { replace: true })
  }, [isOpen, first, go])
  return { card, openCard }
}
