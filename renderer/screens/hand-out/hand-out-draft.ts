import type { CallInput } from '../../../db/contract/contract.ts'
import type { WithdrawalPurpose } from '../../../db/contract/fields.ts'
import type { Override } from '../../../db/contract/withdrawal-operations.ts'
import {
  isNobodyYet,
  NO_PERSON_YET,
  type PersonDraft,
  whoIsIt,
} from '../../shared/table-form/person-draft.ts'
import {
  type ClosedLines,
  closeLines,
  type LineStep,
  noLines,
  stepLines,
  type VisitLines,
} from '../../shared/table-form/visit-lines.ts'
import { emptyOutLine, isUntouched, lineOf, type OutLine, type OutProblems, outProblems } from './out-line.ts'

type Input = CallInput<'withdrawal.record'>

/** What holds for a whole visit of a member. */
export interface VisitTerms {
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
}

/** A visit of one member while it is being entered; kept key by key, so that nothing typed can be lost. */
export interface HandOutDraft extends VisitTerms {
  /** Names the intention to save, so that a save repeated after a crash acts once. */
  readonly key: string
  readonly member: PersonDraft
  readonly lines: VisitLines<OutLine>
}

export type HandOutStep =
  | { readonly kind: 'member'; readonly change: Partial<PersonDraft> }
  | { readonly kind: 'visit'; readonly change: Partial<VisitTerms> }
  | { readonly kind: 'line'; readonly change: Partial<OutLine> }
  | { readonly kind: 'closed'; readonly lines: VisitLines<OutLine> }
  | { readonly kind: 'next-member'; readonly key: string }
  | LineStep

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
    lines: noLines(emptyOutLine(`${key}-1`)),
  }
}

/** The visit after one thing was done to it. Pure: names come in with the step. */
export function stepHandOut(draft: HandOutDraft, step: HandOutStep): HandOutDraft {
  switch (step.kind) {
    case 'member':
      return { ...draft, member: { ...draft.member, ...step.change } }
    case 'visit':
      return { ...draft, ...step.change }
    case 'line':
      return { ...draft, lines: { ...draft.lines, line: { ...draft.lines.line, ...step.change } } }
    case 'closed':
      return { ...draft, lines: step.lines }
    case 'next-member':
      return emptyHandOut(step.key)
    default:
      return { ...draft, lines: stepLines(draft.lines, step, emptyOutLine) }
  }
}

/** Whether nothing worth keeping was typed. */
export function isBlankHandOut(draft: HandOutDraft): boolean {
  const { listed, line, takenOff } = draft.lines
  const nothingListed = listed.length === 0 && takenOff === null && isUntouched(line)
  return isNobodyYet(draft.member) && nothingListed && draft.promised.trim() === ''
}

/** The lines closed for saving, or the first that lacks something; `nextId` names the empty line that is left. */
export function closeHandOut(draft: HandOutDraft, nextId: string): ClosedLines<OutLine, OutProblems> {
  return closeLines<OutLine, OutProblems>(draft.lines, {
    make: emptyOutLine,
    isUntouched,
    problems: outProblems,
    nothingListed: { lot: 'Nothing is listed yet. Scan or type the first lot here.' },
    nextId,
  })
}

/** The listed lines as the collection takes them, or null while it is not known who takes them. `despite` was read. */
export function handOutOf(
  draft: HandOutDraft,
  listed: readonly OutLine[],
  despite: readonly Override[],
  today: string,
): Input | null {
  const person = whoIsIt(draft.member)
  if (person === undefined) return null
  return {
    key: draft.key,
    person,
    on: draft.on === '' ? today : draft.on,
    purpose: draft.purpose,
    lines: listed.map(lineOf),
    promised: draft.promised,
    promisedBy: draft.promisedBy === '' ? null : draft.promisedBy,
    despite: [...despite],
    reason: despite.length === 0 ? '' : draft.reason,
    slip: draft.slip,
  }
}
