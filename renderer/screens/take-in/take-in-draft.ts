import type { CallInput } from '../../../db/contract/contract.ts'
import {
  isNobodyYet,
  NO_PERSON_YET,
  type PersonDraft,
  whoIsIt,
} from '../../shared/table-form/person-draft.ts'
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
  readonly line: GiftLine
  /** The gift on the list that `line` is a change of, or null. */
  readonly changing: string | null
  /** What was being typed when an earlier gift was taken up for a change. */
  readonly setAside: GiftLine | null
  readonly gifts: readonly GiftLine[]
  /** The gift taken off the list last, to be put back. */
  readonly takenOff: { readonly gift: GiftLine; readonly at: number } | null
}

export type TakeInStep =
  | { readonly kind: 'donor'; readonly change: Partial<PersonDraft> }
  | { readonly kind: 'visit'; readonly change: Partial<Pick<TakeInDraft, 'receivedOn' | 'placeId'>> }
  | { readonly kind: 'line'; readonly change: Partial<GiftLine> }
  | { readonly kind: 'list-line'; readonly nextId: string }
  | { readonly kind: 'change-gift'; readonly id: string }
  | { readonly kind: 'take-off'; readonly id: string }
  | { readonly kind: 'put-back' }
  | { readonly kind: 'next-donor'; readonly key: string }
  | { readonly kind: 'take-up'; readonly draft: TakeInDraft }

/** A visit to begin with. The place stays from one donor to the next, as the box on the table does. */
export function emptyVisit(
  key: string,
  pinned: { readonly placeId: number | null } = { placeId: null },
): TakeInDraft {
  return {
    key,
    donor: NO_PERSON_YET,
    receivedOn: '',
    placeId: pinned.placeId,
    line: emptyGift(`${key}-1`),
    changing: null,
    setAside: null,
    gifts: [],
    takenOff: null,
  }
}

/** The visit after one thing was done to it. Pure: names and times come in with the step. */
export function stepTakeIn(draft: TakeInDraft, step: TakeInStep): TakeInDraft {
  switch (step.kind) {
    case 'donor':
      return { ...draft, donor: { ...draft.donor, ...step.change } }
    case 'visit':
      return { ...draft, ...step.change }
    case 'line':
      return { ...draft, line: { ...draft.line, ...step.change } }
    case 'list-line':
      return listLine(draft, step.nextId)
    case 'change-gift':
      return changeGift(draft, step.id)
    case 'take-off':
      return takeOff(draft, step.id)
    case 'put-back':
      return putBack(draft)
    case 'next-donor':
      return emptyVisit(step.key, draft)
    case 'take-up':
      return step.draft
  }
}

function listLine(draft: TakeInDraft, nextId: string): TakeInDraft {
  const { line, changing } = draft
  const gifts =
    changing === null
      ? [...draft.gifts, line]
      : draft.gifts.map((gift) => (gift.id === changing ? line : gift))
  const next = draft.setAside ?? emptyGift(nextId, line.harvest)
  return { ...draft, gifts, line: next, changing: null, setAside: null }
}

function changeGift(draft: TakeInDraft, id: string): TakeInDraft {
  const gift = draft.gifts.find((each) => each.id === id)
  if (!gift || draft.changing === id) return draft
  const kept = draft.changing === null ? draft : listLine(draft, draft.line.id)
  return { ...kept, line: gift, changing: id, setAside: kept.line }
}

function takeOff(draft: TakeInDraft, id: string): TakeInDraft {
  const at = draft.gifts.findIndex((each) => each.id === id)
  const gift = draft.gifts[at]
  if (!gift) return draft
  const rest = { ...draft, gifts: draft.gifts.filter((each) => each.id !== id), takenOff: { gift, at } }
  if (draft.changing !== id) return rest
  // The change being typed is the newest form of the gift: that is what can be put back.
  return {
    ...rest,
    takenOff: { gift: draft.line, at },
    line: draft.setAside ?? emptyGift(`${id}-after`, draft.line.harvest),
    changing: null,
    setAside: null,
  }
}

function putBack(draft: TakeInDraft): TakeInDraft {
  if (draft.takenOff === null) return draft
  const { gift, at } = draft.takenOff
  return { ...draft, gifts: draft.gifts.toSpliced(at, 0, gift), takenOff: null }
}

/** Whether nothing worth keeping was typed. */
export function isBlankVisit(draft: TakeInDraft): boolean {
  return isNobodyYet(draft.donor) && draft.gifts.length === 0 && isUntouched(draft.line)
}

/** The visit as the collection takes it, or null while the donor is not known. */
export function visitOf(draft: TakeInDraft, today: string): CallInput<'intake.record'> | null {
  const donor = whoIsIt(draft.donor)
  if (donor === undefined) return null
  return {
    key: draft.key,
    donor,
    receivedOn: draft.receivedOn === '' ? today : draft.receivedOn,
    gifts: draft.gifts.map((gift) => giftOf(gift, draft.placeId)),
  }
}

/** The visit with every line on its list, or with the first gift that lacks something taken up for a change. */
export interface ClosedVisit {
  readonly draft: TakeInDraft
  readonly problems: GiftProblems | null
}

/**
 * Closes a visit for saving: what is still being typed is listed, and every gift is looked at once more.
 *
 * `nextId` names the empty line that is left.
 */
export function closeVisit(draft: TakeInDraft, thisYear: number, nextId: string): ClosedVisit {
  if (draft.changing !== null || !isUntouched(draft.line)) {
    const problems = giftProblems(draft.line, thisYear)
    if (hasAny(problems)) return { draft, problems }
    return closeVisit(stepTakeIn(draft, { kind: 'list-line', nextId }), thisYear, nextId)
  }
  for (const gift of draft.gifts) {
    const problems = giftProblems(gift, thisYear)
    if (hasAny(problems)) return { draft: stepTakeIn(draft, { kind: 'change-gift', id: gift.id }), problems }
  }
  if (draft.gifts.length > 0) return { draft, problems: null }
  return { draft, problems: { variety: 'Nothing is listed yet. Type the first gift here.' } }
}

function hasAny(problems: GiftProblems): boolean {
  return Object.keys(problems).length > 0
}
