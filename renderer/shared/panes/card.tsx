import { type ComponentProps, useEffect, useSyncExternalStore } from 'react'

let open: string | null = null
const listeners = new Set<() => void>()

function tell(name: string | null): void {
  open = name
  for (const listener of listeners) listener()
}

interface CardProps extends Omit<ComponentProps<'article'>, 'aria-label'> {
  readonly name: string
}

/** The card of one thing. The window is named after it as long as it stands. */
export function Card({ name, ...rest }: CardProps) {
  useEffect(() => {
    tell(name)
    return () => tell(null)
  }, [name])
  return <article {...rest} aria-label={name} />
}

/** The name of the card that stands open; null where none does. */
export function useCardName(): string | null {
  return useSyncExternalStore(subscribe, () => open)
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}
