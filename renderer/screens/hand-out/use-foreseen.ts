import type { CallInput, Value } from '../../../db/contract/contract.ts'
import type { Problem } from '../../../db/contract/problem.ts'
import type { Override } from '../../../db/contract/withdrawal-operations.ts'
import { useRead } from '../../shared/client/use-read.ts'
import { amountProblem } from '../../shared/format/manner.ts'
import { useSettled } from '../../shared/table-form/use-settled.ts'
import type { HandOutDraft } from './hand-out-draft.ts'
import { lineOf, type OutLine } from './out-line.ts'

type Answer = Value<'withdrawal.foresee'>
export type Foreseen = Answer['lines'][number]
export type Caution = Answer['cautions'][number]

/** What handing the visit's lines out would do: by the id of a line that can be read, and of the visit as a whole. */
export interface ForeseenVisit {
  readonly ofLine: ReadonlyMap<string, Foreseen>
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

export function useForeseen(draft: HandOutDraft): ForeseenVisit {
  const settled = useSettled(draft.lines, FORESEE_AFTER_MS)
  const { listed, line, changing } = settled
  const all =
    changing === null ? [...listed, line] : listed.map((each) => (each.id === changing ? line : each))
  const readable = all.filter(canBeForeseen)
  const input = readable.length === 0 ? null : foreseeInput(draft, readable)
  const answer = useRead('withdrawal.foresee', input, { keepLast: true })
  const foreseen = (input === null ? null : answer.data) ?? NOTHING
  // Answers come in the order of the lines asked about; an answer of before is of use only where the lines still match.
  const ofLine = readable.flatMap(({ id, lot }, index) => {
    const of = foreseen.lines[index]
    return of !== undefined && of.lotId === lot?.lotId ? [[id, of] as const] : []
  })
  const answered = input === null || !(answer.isPending || answer.isPlaceholderData)
  const fresh = settled === draft.lines && answered
  return {
    ofLine: new Map(ofLine),
    cautions: foreseen.cautions,
    fresh,
    known: fresh && (input === null || !answer.isFetching),
    failure: input === null ? null : (answer.error?.problem ?? null),
    askAgain: () => void answer.refetch(),
  }
}

/** The lines of a visit as they are foreseen. */
export function foreseeInput(
  draft: Pick<HandOutDraft, 'purpose'>,
  lines: readonly OutLine[],
): CallInput<'withdrawal.foresee'> {
  return { purpose: draft.purpose, lines: lines.map(lineOf) }
}

function canBeForeseen(line: OutLine): boolean {
  return line.lot !== null && amountProblem(line.amount) === undefined
}

/** Every caution of a visit, each once. */
export function cautionsOf({ lines, cautions }: Answer): readonly Override[] {
  return [...new Set([...cautions, ...lines.flatMap((line) => line.cautions)].map(({ despite }) => despite))]
}
