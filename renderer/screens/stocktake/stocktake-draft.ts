import type { CallInput } from '../../../db/contract/contract.ts'
import type { Message } from '../../../db/messages/message.ts'
import { amountProblem } from '../../shared/format/manner.ts'
import type { RefusalSteps } from '../../shared/table-form/refusals.ts'

/** A lot as it stands in the list of a stocktake. */
export interface ListedLot {
  readonly lotId: number
  readonly lotNumber: string
  readonly variety: string
  readonly crop: string
  readonly place: string
}

/** A lot with what was typed of it. */
export interface CountedLot extends ListedLot {
  readonly found: string
}

/** A stocktake while it is under way, over one place or several; kept key by key. */
export interface StocktakeDraft {
  /** Names the intention to save, so that a save repeated after a crash acts once. */
  readonly key: string
  /** '' for today. */
  readonly on: string
  readonly reason: string
  readonly lots: readonly CountedLot[]
  /** The lot in hand. */
  readonly at: number | null
}

export type CountStep = 'found' | 'reason'

export function emptyStocktake(key: string): StocktakeDraft {
  return { key, on: '', reason: '', lots: [], at: null }
}

/** The draft with what was typed of a lot, which is the lot in hand now. */
export function withFound(
  draft: StocktakeDraft,
  { lotId, lotNumber, variety, crop, place }: ListedLot,
  found: string,
): StocktakeDraft {
  const lot = { lotId, lotNumber, variety, crop, place, found }
  const known = draft.lots.some((each) => each.lotId === lotId)
  const lots = known ? draft.lots.map((each) => (each.lotId === lotId ? lot : each)) : [...draft.lots, lot]
  return { ...draft, lots, at: lotId }
}

export function isBlankStocktake(draft: StocktakeDraft): boolean {
  return draft.lots.every(({ found }) => found.trim() === '') && draft.reason.trim() === ''
}

const NOTHING_WORDS: ReadonlySet<string> = new Set([
  '0',
  'nothing',
  'none',
  'empty',
  'nada',
  'vacío',
  'vacio',
])

/** Whether what was typed says that a jar was found empty. */
export function saysNothing(found: string): boolean {
  return NOTHING_WORDS.has(found.trim().toLowerCase())
}

/** The lots of which something was typed. */
export function countedLots(draft: StocktakeDraft): readonly CountedLot[] {
  return draft.lots.filter(({ found }) => found.trim() !== '')
}

type FoundLine = CallInput<'stocktake.record'>['lines'][number]

export function lineOf({ lotId, found }: CountedLot): FoundLine {
  return { lotId, found: saysNothing(found) ? 'nothing' : found }
}

/** What is wrong with a found amount as it stands, or undefined. */
export function foundProblem(found: string): Message | undefined {
  return saysNothing(found) ? undefined : amountProblem(found)
}

export const COUNT_REFUSALS: RefusalSteps<CountStep> = {
  field: { reason: 'reason' },
  line: () => 'found',
}
