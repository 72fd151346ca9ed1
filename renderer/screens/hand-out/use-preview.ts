import type { CallInput, Value } from '../../../db/contract/contract.ts'
import type { Problem } from '../../../db/contract/problem.ts'
import type { Override } from '../../../db/contract/withdrawal-operations.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { canBePreviewed, type LotLine } from '../../shared/table-form/lot-line.ts'
import { useSettled } from '../../shared/table-form/use-settled.ts'
import { type HandOutDraft, lineOf } from './hand-out-draft.ts'

type Answer = Value<'withdrawal.preview'>
export type Previewed = Answer['lines'][number]
export type Caution = Answer['cautions'][number]

/** What handing the visit's lines out would do: by the id of a line that can be read, and of the visit as a whole. */
export interface VisitPreview {
  readonly ofLine: ReadonlyMap<string, Previewed>
  readonly cautions: readonly Caution[]
  /** Whether this is about the lines as they stand, so that it may be chosen from. */
  readonly fresh: boolean
  /** Whether it is known for the book as it stands, so that it may hold a line back or let it go. */
  readonly known: boolean
  /** Why it could not be asked. */
  readonly failure: Problem | null
  readonly askAgain: () => void
}

const FORESEE_AFTER_MS = 80
const NOTHING: Answer = { lines: [], cautions: [] }

export function usePreview(draft: HandOutDraft): VisitPreview {
  const settled = useSettled(draft.lines, FORESEE_AFTER_MS)
  const { listed, line, changing } = settled
  const all =
    changing === null ? [...listed, line] : listed.map((each) => (each.id === changing ? line : each))
  const readable = all.filter((each) => canBePreviewed(each))
  const input = readable.length === 0 ? null : previewInput(draft, readable)
  const answer = useRead('withdrawal.preview', input, { keepLast: true })
  const previewed = (input === null ? null : answer.data) ?? NOTHING
  // Answers come in the order of the lines asked about; an answer of before is of use only where the lines still match.
  const ofLine = readable.flatMap(({ id, lot }, index) => {
    const of = previewed.lines[index]
    return of !== undefined && of.lotId === lot.lotId ? [[id, of] as const] : []
  })
  const answered = input === null || !(answer.isPending || answer.isPlaceholderData)
  const fresh = settled === draft.lines && answered
  return {
    ofLine: new Map(ofLine),
    cautions: previewed.cautions,
    fresh,
    known: fresh && (input === null || !answer.isFetching),
    failure: input === null ? null : (answer.error?.problem ?? null),
    askAgain: () => void answer.refetch(),
  }
}

/** The lines of a visit as they are previewed. */
export function previewInput(
  draft: Pick<HandOutDraft, 'purpose'>,
  lines: readonly LotLine[],
): CallInput<'withdrawal.preview'> {
  return { purpose: draft.purpose, lines: lines.map(lineOf) }
}

/** Every caution of a visit, each once. */
export function cautionsOf({ lines, cautions }: Answer): readonly Override[] {
  return [...new Set([...cautions, ...lines.flatMap((line) => line.cautions)].map(({ despite }) => despite))]
}
