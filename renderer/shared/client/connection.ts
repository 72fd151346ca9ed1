import { useSyncExternalStore } from 'react'

export type Connection = 'there' | 'away'

let now: Connection = 'there'
const listeners = new Set<() => void>()

/** Notes whether the last call was answered at all. */
export function noteConnection(next: Connection): void {
  if (next === now) return
  now = next
  for (const listener of listeners) listener()
}

export function useConnection(): Connection {
  return useSyncExternalStore(subscribe, () => now)
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}
