import type { CallInput } from '../../../db/contract/contract.ts'
import type { Texts } from '../../../db/messages/texts.ts'
import {
  isNobodyYet,
  NO_PERSON_YET,
  type PersonDraft,
  whoIsIt,
} from '../../shared/table-form/person-draft.ts'
import {
  isBlankLines,
  type LineRules,
  noLines,
  type VisitLines,
} from '../../shared/table-form/visit-lines.ts'
import { emptyGift, type GiftLine, type GiftStep, giftOf, giftProblems, isUntouched } from './gift-line.ts'

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

export function emptyVisit(key: string, placeId: number | null = null): TakeInDraft {
  return { key, donor: NO_PERSON_YET, receivedOn: '', placeId, gifts: noLines(emptyGift(`${key}-1`)) }
}

/** The place stays from one donor to the next, as the box on the table does. */
export function nextVisit({ placeId }: TakeInDraft, key: string): TakeInDraft {
  return emptyVisit(key, placeId)
}

/** Whether nothing worth keeping was typed. */
export function isBlankVisit({ donor, gifts }: TakeInDraft): boolean {
  return isNobodyYet(donor) && isBlankLines(gifts, isUntouched)
}

/** What the gifts of a visit need. The season of the last gift stays for the next. */
export function giftRules(thisYear: number, t: Texts['text']): LineRules<GiftLine, GiftStep> {
  return {
    make: (id, after) => emptyGift(id, after?.harvest),
    isUntouched,
    problems: (line) => giftProblems(line, thisYear, t),
    nothingListed: { variety: t('take-in.nothing-listed') },
  }
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
    receivedOn: draft.receivedOn || today,
    gifts: listed.map((gift) => giftOf(gift, draft.placeId)),
  }
}
