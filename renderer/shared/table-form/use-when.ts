import { useLayoutEffect, useRef } from 'react'

/** Tells when something holds on the page: at once where it does, else with the first drawing in which it does. */
export function useWhen(holds: boolean): () => Promise<void> {
  const now = useRef(holds)
  const waiting = useRef<(() => void)[]>([])
  useLayoutEffect(() => {
    now.current = holds
    if (holds) for (const goOn of waiting.current.splice(0)) goOn()
  })
  return () =>
    now.current ? Promise.resolve() : new Promise((resolve) => waiting.current.push(() => resolve()))
}
