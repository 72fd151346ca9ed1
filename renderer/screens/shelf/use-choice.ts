import { type RefObject, useEffect, useRef, useState, useSyncExternalStore } from 'react'
import { useLocation } from 'wouter'
import { lotAddress } from '../../shared/addresses.ts'

interface Choice {
  /** The lot whose row is marked in the list. */
  readonly marked: number | null
  readonly onePane: boolean
  /** Set by Enter, anew each time: the card of the marked row is to take the focus. */
  readonly entered: object | null
  readonly choose: (lotId: number, how: 'arrow' | 'click') => void
  /** Goes on from the marked row to its card. */
  readonly enter: () => void
}

/**
 * What choosing a row does. Where list and card stand side by side, arrows open each card as they pass; where only one
 * fits, arrows mark a row, Enter opens its card, and going back leads to the list again.
 */
export function useChoice(lotId: number | undefined, screen: RefObject<HTMLElement | null>): Choice {
  const onePane = useOnePane()
  const [, go] = useLocation()
  const [passed, setPassed] = useState<number | null>(lotId ?? null)
  const [entered, setEntered] = useState<object | null>(null)
  const openBefore = useRef(lotId !== undefined)
  useEffect(() => {
    if (onePane && openBefore.current && lotId === undefined) {
      screen.current?.querySelector<HTMLElement>('[role="grid"]')?.focus()
    }
    openBefore.current = lotId !== undefined
  }, [lotId, onePane, screen])
  return {
    marked: lotId ?? (onePane ? passed : null),
    onePane,
    entered,
    choose: (chosen, how) => {
      setPassed(chosen)
      setEntered(null)
      if (how === 'click' || !onePane) go(lotAddress(chosen), { replace: how === 'arrow' })
    },
    enter: () => {
      if (onePane && passed !== null) go(lotAddress(passed))
      else setEntered({})
    },
  }
}

/** Below this width the list and the card do not fit beside each other; shelf-widths.css says the same. */
const onePane = window.matchMedia('(width < 73.75em)')

/** Whether the shelf shows either its list or a card. */
function useOnePane(): boolean {
  return useSyncExternalStore(subscribe, () => onePane.matches)
}

function subscribe(listener: () => void): () => void {
  onePane.addEventListener('change', listener)
  return () => onePane.removeEventListener('change', listener)
}
