import { useState } from 'react'
import { call } from '../../shared/client/call.ts'
import type { ShelfQuery } from './filters.ts'

/** How many lots can be ticked at once. */
export const MOST_TICKED = 500

/** Lots that are ticked, to do one thing with all of them. */
export interface Ticks {
  /** In the order in which they were ticked. */
  readonly lotIds: readonly number[]
  readonly has: (lotId: number) => boolean
  readonly turn: (lotId: number) => void
  /** Ticks what a question finds, up to the most that can be ticked. */
  readonly tickFound: (query: ShelfQuery) => Promise<void>
  readonly untickAll: () => void
}

let tickedLastTime: ReadonlySet<number> = new Set()

/** The ticks of the shelf. They stay while the shelf is narrowed otherwise, or a card is looked at. */
export function useTicks(): Ticks {
  const [ticked, setTicked] = useState(tickedLastTime)
  const set = (next: ReadonlySet<number>) => {
    tickedLastTime = next
    setTicked(next)
  }
  return {
    lotIds: [...ticked],
    has: (lotId) => ticked.has(lotId),
    turn: (lotId) => {
      if (ticked.has(lotId)) set(new Set([...ticked].filter((each) => each !== lotId)))
      else if (ticked.size < MOST_TICKED) set(new Set([...ticked, lotId]))
    },
    tickFound: async (query) => {
      const { rows } = await call('lot.list', { ...query, offset: 0, limit: MOST_TICKED })
      // Others may have been ticked meanwhile.
      const all = [...tickedLastTime, ...rows.map(({ lotId }) => lotId)]
      set(new Set(all.slice(0, MOST_TICKED)))
    },
    untickAll: () => set(new Set()),
  }
}
