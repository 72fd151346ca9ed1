import { type ComponentType, lazy, useState } from 'react'

const toFetch: (() => Promise<unknown>)[] = []

/**
 * A screen whose code is fetched when it is first opened, or before that by {@link fetchAhead}.
 *
 * One that is there already is drawn at once: what has to be waited for, however shortly, React holds back for 300 ms.
 */
export function fetchedAhead<P extends object>(fetch: () => Promise<ComponentType<P>>): ComponentType<P> {
  let there: ComponentType<P> | null = null
  const once = async () => {
    there ??= await fetch()
    return there
  }
  const Later = lazy(async () => ({ default: await once() }))
  toFetch.push(once)
  // biome-ignore lint/correctness/noComponentHookFactories: called once for each screen, as `lazy` is, never in a render.
  return function FetchedScreen(props: P) {
    // For as long as it stands it stays the same component, or what is typed in it would be lost.
    const [Shown] = useState<ComponentType<P>>(() => there ?? Later)
    return <Shown {...props} />
  }
}

/** Fetches the code of every screen, one after the other. What cannot be fetched now is fetched when it is opened. */
export async function fetchAhead(): Promise<void> {
  for (const fetch of toFetch) await fetch().catch(() => undefined)
}
