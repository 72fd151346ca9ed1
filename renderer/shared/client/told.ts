import { useSyncExternalStore } from 'react'

/** A value that one part of the window tells and any other shows, each as soon as it changes. */
export function createTold<T>(first: T) {
  let now = first
  const listeners = new Set<() => void>()
  const subscribe = (listener: () => void) => {
    listeners.add(listener)
    return () => listeners.delete(listener)
  }
  return {
    tell: (next: T): void => {
      if (next === now) return
      now = next
      for (const listener of listeners) listener()
    },
    useTold: (): T => useSyncExternalStore(subscribe, () => now),
  }
}
