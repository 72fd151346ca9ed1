import type { Milligrams } from './mass.ts'
import type { SeedCount } from './seed-count.ts'

/** Which of the two numbers of a movement was observed. */
export type Measured = 'mass' | 'count' | 'estimate'

/** An amount of seed as a person gave it: weighed, counted, or a guess at the count. */
export type Amount =
  | { readonly kind: 'mass'; readonly mass: Milligrams }
  | { readonly kind: 'count'; readonly count: SeedCount; readonly estimated: boolean }

/** What was observed when this amount was given. */
export function measuredOf(amount: Amount): Measured {
  if (amount.kind === 'mass') return 'mass'
  return amount.estimated ? 'estimate' : 'count'
}
