import type { CallInput } from '../../../db/contract/contract.ts'
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
import {
  emptyGift,
  type GiftLine,
  type GiftProblems,
  giftOf,
  giftProblems,
  isUntouched,
} from './gift-line.ts'

/** A visit of one donor while it is being entered; kept key by key, so that nothing typed can be lost. */
export interface TakeInDraft {
  /** Names the intention to save, so that a save repeated after a crash acts once. */
  readonly key: string
  readonly donor: PersonDraft
  /** '' for today. */
  readonly receivedOn: string
  readonly placeId: number | null
  readonly gifts: VisitLines<GiftLine>
}

export type TakeInStep =
  | { readonly kind: 'donor'; readonly change: Partial<PersonDraft> }
  | { readonly kind: 'visit'; readonly change: Partial<Pick<TakeInDraft, 'receivedOn' | 'placeId'>> }
  | { readonly kind: 'line'; readonly change: Partial<GiftLine> }
  | { readonly kind: 'closed'; readonly gifts: VisitLines<GiftLine> }
  | { readonly kind: 'next-donor'; readonly key: string }
  | LineStep

/** A visit to begin with. The place stays from one donor to the next, as the box on the table does. */
export function emptyVisit(key: string, placeId: number | null = null): TakeInDraft {
  return { key, donor: NO_PERSON_YET, receivedOn: '', placeId, gifts: noLines(emptyGift(`${key}-1`)) }
}

/** The visit after one thing was done to it. Pure: names come in with the step. */
export function stepTakeIn(draft: TakeInDraft, step: TakeInStep): TakeInDraft {
  switch (step.kind) {
    case 'donor':
      return { ...draft, donor: { ...draft.donor, ...step.change } }
    case 'visit':
      return { ...draft, ...step.change }
    case 'line':
      return { ...draft, gifts: { ...draft.gifts, line: { ...draft.gifts.line, ...step.change } } }
    case 'closed':
      return { ...draft, gifts: step.gifts }
    case 'next-donor':
      return emptyVisit(step.key, draft.placeId)
    default:
      return { ...draft, gifts: stepLines(draft.gifts, step, nextGift) }
  }
}

/** The season of the last gift stays for the next. */
function nextGift(id: string, after?: GiftLine): GiftLine {
  return emptyGift(id, after?.harvest)
}

/** Whether nothing worth keeping was typed. */
export function isBlankVisit(draft: TakeInDraft): boolean {
  const { listed, line, takenOff } = draft.gifts
  return isNobodyYet(draft.donor) && listed.length === 0 && takenOff === null && isUntouched(line)
}

/** The gifts closed for saving, or the first that lacks something; `nextId` names the empty line that is left. */
export function closeVisit(
  draft: TakeInDraft,
  thisYear: number,
  nextId: string,
): ClosedLines<GiftLine, GiftProblems> {
  return closeLines<GiftLine, GiftProblems>(draft.gifts, {
    make: nextGift,
    isUntouched,
    problems: (line) => giftProblems(line, thisYear),
    nothingListed: { variety: 'Nothing is listed yet. Type the first gift here.' },
    nextId,
  })
}

/** The listed gifts as the collection takes them, or null while the donor is not known. */
export function visitOf(
  draft: TakeInDraft,
  listed: readonly GiftLine[],
  today: string,
): CallInput<'intake.record'> | null {
  const donor = whoIsIt(draft.donor)
  if (donor === undefined) return null
  return {
    key: draft.key,
    donor,
    receivedOn: draft.receivedOn === '' ? today : draft.receivedOn,
    gifts: listed.map((gift) => giftOf(gift, draft.placeId)),
  }
}
