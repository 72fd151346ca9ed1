import { useState } from 'react'

const kept = new Map<string, object>()

/** What is being typed into a form of a card, kept while other cards are looked at. */
export interface SavedForm<T> {
  readonly typed: T
  readonly change: (part: Partial<T>) => void
  readonly discard: () => void
}

/**
 * Keeps a half-filled form by its name until it is sent: no wrong key and no other card loses it. Without a name, what
 * is typed stays as long as the form stands.
 */
export function useSavedForm<T extends object>(name: string | undefined, empty: T): SavedForm<T> {
  const keptNow = () => (name === undefined ? undefined : kept.get(name))
  const [typed, setTyped] = useState<T>(() => ({ ...empty, ...keptNow() }))
  return {
    typed,
    change: (part) => {
      // Something may have been changed since this was drawn, as while a plan is made.
      const next = { ...typed, ...keptNow(), ...part }
      if (name !== undefined) kept.set(name, next)
      setTyped(next)
    },
    discard: () => {
      if (name === undefined) return
      kept.delete(name)
      setTyped(empty)
    },
  }
}

/** Whether a form of this name is half filled. */
export function isBegun(name: string): boolean {
  return kept.has(name)
}
