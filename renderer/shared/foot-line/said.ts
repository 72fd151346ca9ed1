import { useSyncExternalStore } from 'react'

/** What just happened, in one sentence; with its entry where it can be taken back. */
export interface Said {
  readonly said: string
  readonly entryId?: number
  readonly undoable?: boolean
}

let last: Said | null = null
const listeners = new Set<() => void>()

/** Says what just happened on the foot line. A receipt of a write can be passed as it is. */
export function say(said: Said): void {
  last = said
  for (const listener of listeners) listener()
}

export function useSaid(): Said | null {
  return useSyncExternalStore(subscribe, () => last)
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}
