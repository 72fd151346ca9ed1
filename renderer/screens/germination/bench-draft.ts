import type { TypedCells } from './typed-counts.ts'

/** A count of a test as it is being typed. */
export interface TypedCount {
  /** '' for today. */
  readonly on: string
  readonly cells: TypedCells
}

export const NOTHING_TYPED: TypedCount = { on: '', cells: {} }

/** The counts being typed at the bench, by the id of their test; kept key by key. */
export interface BenchDraft {
  readonly counts: Readonly<Record<string, TypedCount>>
}

export type BenchStep =
  | { readonly kind: 'typed'; readonly testId: number; readonly change: Partial<TypedCount> }
  | { readonly kind: 'discard'; readonly testId: number }

export function emptyBench(): BenchDraft {
  return { counts: {} }
}

export function countOf({ counts }: BenchDraft, testId: number): TypedCount {
  return counts[testId] ?? NOTHING_TYPED
}

export function stepBench(draft: BenchDraft, step: BenchStep): BenchDraft {
  const { [step.testId]: before = NOTHING_TYPED, ...others } = draft.counts
  if (step.kind === 'discard') return { counts: others }
  return { counts: { ...others, [step.testId]: { ...before, ...step.change } } }
}

/** How many tests have a count that is typed and not written down. */
export function countsTyped({ counts }: BenchDraft): number {
  return Object.values(counts).filter(({ cells }) =>
    Object.values(cells).some((typed) => typed.trim() !== ''),
  ).length
}

export function isBlankBench(draft: BenchDraft): boolean {
  return countsTyped(draft) === 0
}
