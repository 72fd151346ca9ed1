import type { Measured } from '../shared/closed-sets.ts'
import type { Milligrams } from './mass.ts'
import type { SeedCount } from './seed-count.ts'

/** An amount of seed as a person gave it: weighed, counted, or a guess at the count. */
export type Amount =
  | { readonly kind: 'mass'; readonly mass: Milligrams }
  | { readonly kind: 'count'; readonly count: SeedCount; readonly estimated: boolean }

/** What was observed when this amount was given. */
export function measuredOf(amount: Amount): Measured {
  if (amount.kind === 'mass') return 'mass'
  return amount.estimated ? 'estimate' : 'count'
}
