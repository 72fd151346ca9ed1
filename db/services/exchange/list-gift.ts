import type { Fate } from '../../contract/intake-operations.ts'
import type { Amount } from '../../domain/amounts/amount.ts'
import type { HarvestYear } from '../../domain/dates/harvest-year.ts'
import type { GiftLimits } from '../../domain/terms/gift-limits.ts'
import type { WeighedSample } from '../../domain/weights/hundred-seed-weight.ts'
import { type Message, message } from '../../messages/message.ts'
import type { KnownCrop } from '../../queries/list-rows.ts'
import type { Named } from './list-book.ts'

/** A gift as a row gives it, with everything settled. */
export interface ListGift {
  readonly row: number
  readonly crop: KnownCrop
  readonly variety: Known
  readonly otherNames: readonly string[]
  readonly donor: (Known & { readonly town: string }) | null
  readonly receivedOn: string
  readonly harvest: HarvestYear
  readonly amount: Amount | null
  readonly sample: WeighedSample | null
  readonly place: Known | null
  readonly grownAt: string
  readonly terms: string
  /** What its terms say in the sentences of this app; null: nothing that it knows. */
  readonly limits: GiftLimits | null
  readonly story: string
  /** What the seed was treated with; null where nothing says so. */
  readonly treated: string | null
  readonly passport: ReadonlyMap<string, string>
}

type Known = { readonly known: Named } | { readonly fresh: string }

/** What becomes of a row. */
export interface RowFate {
  readonly row: number
  readonly fate: Fate
  readonly words: Message | string
  /** Empty for a gift that comes in. */
  readonly because: Message | ''
}

/** What a row turns out to be: a gift, or why none comes in. */
export type Outcome =
  | { readonly gift: ListGift }
  | { readonly fate: Exclude<Fate, 'new'>; readonly because: Message }

/** A row that cannot come in, and why. */
export function refused(because: Message): Outcome {
  return { fate: 'refused', because }
}

export const OPEN: Outcome = { fate: 'doubtful', because: message('import.waits') }
export const LEFT_OUT: Outcome = { fate: 'left-out', because: message('import.left-out') }

/** The first and last year of a harvest, null where it is unknown. */
export function yearsOf(harvest: HarvestYear): readonly [number | null, number | null] {
  if (harvest.kind === 'unknown') return [null, null]
  return harvest.kind === 'year' ? [harvest.year, harvest.year] : [harvest.from, harvest.to]
}
