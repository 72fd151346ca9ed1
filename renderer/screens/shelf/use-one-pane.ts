import { useSyncExternalStore } from 'react'

/** Below this width the list and the card do not fit beside each other; shelf-widths.css says the same. */
const onePane = window.matchMedia('(width < 73.75em)')

/** Whether the shelf shows either its list or a card. */
export function useOnePane(): boolean {
  return useSyncExternalStore(subscribe, () => onePane.matches)
}

function subscribe(listener: () => void): () => void {
  onePane.addEventListener('change', listener)
  return () => onePane.removeEventListener('change', listener)
}
