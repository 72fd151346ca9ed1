import type { CallInput } from '../../../db/contract/contract.ts'
import type { WithdrawalPurpose } from '../../../db/contract/fields.ts'
import type { Override } from '../../../db/contract/withdrawal-operations.ts'
import { type Message, message } from '../../../db/messages/message.ts'
import { amountProblem } from '../../shared/format/manner.ts'
import { institutionOf, type TypedInstitution } from '../../shared/institutions/institution-draft.ts'
import { emptyLotLine, isUntouchedLot, type LotLine } from '../../shared/table-form/lot-line.ts'
import {
  isNobodyYet,
  NO_PERSON_YET,
  type PersonDraft,
  whoIsIt,
} from '../../shared/table-form/person-draft.ts'
import { onlyProblems, type RefusalSteps, type UntoldProblems } from '../../shared/table-form/refusals.ts'
import {
  isBlankLines,
  type LineRules,
  noLines,
  type VisitLines,
} from '../../shared/table-form/visit-lines.ts'

type Input = CallInput<'withdrawal.record'>

/** A visit of one member while it is being entered; kept key by key, so that nothing typed can be lost. */
export interface HandOutDraft {
  /** Names the intention to save, so that a save repeated after a crash acts once. */
  readonly key: string
  readonly member: PersonDraft
  /** '' for today. */
  readonly on: string
  readonly purpose: WithdrawalPurpose
  readonly promised: string
  /** A day, or ''. */
  readonly promisedBy: string
  /** Why something goes out in spite of a caution that was read. */
  readonly reason: string
  /** Whether a withdrawal slip is wanted on paper. */
  readonly slip: boolean
  /** What belongs to a hand-out to an institution; null or missing, as in older drafts: it goes to none. */
  readonly institution?: TypedInstitution | null
  readonly lines: VisitLines<LotLine>
}

export type OutStep = 'lot' | 'amount' | 'reason'

export function emptyHandOut(key: string): HandOutDraft {
  return {
    key,
    member: NO_PERSON_YET,
    on: '',
    purpose: 'to-grow',
    promised: '',
    promisedBy: '',
    reason: '',
    slip: false,
    institution: null,
    lines: noLines(emptyLotLine(`${key}-1`)),
  }
}

/** Whether nothing worth keeping was typed. */
export function isBlankHandOut({ member, lines, promised, institution }: HandOutDraft): boolean {
  return isNobodyYet(member) && isBlankLines(lines, isUntouchedLot) && promised.trim() === '' && !institution
}

/** What a line still lacks before it can be put on the visit's list. */
export function outProblems({ lot, text, amount }: LotLine): UntoldProblems<OutStep> {
  return lot === null ? { lot: lotProblem(text.trim()) } : onlyProblems({ amount: amountProblem(amount) })
}

function lotProblem(typed: string): Message {
  return typed === '' ? message('hand-out.which-lot') : message('hand-out.choose-lot', { typed })
}

export const PACKETS: LineRules<LotLine, OutStep> = {
  make: emptyLotLine,
  isUntouched: isUntouchedLot,
  problems: outProblems,
  nothingListed: { lot: message('hand-out.nothing-listed') },
}

export const OUT_REFUSALS: RefusalSteps<OutStep> = {
  person: 'person',
  line: (within) => (within === 'amount' ? 'amount' : 'lot'),
}

/** The line as the collection takes it. Throws RangeError where no lot was picked. */
export function lineOf({ lot, amount }: LotLine): Input['lines'][number] {
  if (lot === null) throw new RangeError('A line needs its lot')
  return { lotId: lot.lotId, amount }
}

/** The listed lines as the collection takes them, or null while it is not known who takes them. `despite` was read. */
export function handOutOf(
  draft: HandOutDraft,
  listed: readonly LotLine[],
  despite: readonly Override[],
  today: string,
): Input | null {
  const { key, purpose, promised, slip, institution } = draft
  const person = whoIsIt(draft.member)
  if (person === undefined) return null
  return {
    key,
    person,
    on: draft.on || today,
    purpose,
    lines: listed.map(lineOf),
    promised,
    promisedBy: draft.promisedBy || null,
    despite: [...despite],
    reason: despite.length === 0 ? '' : draft.reason,
    slip,
    institution: purpose === 'other' && institution ? institutionOf(institution) : null,
  }
}
