import { bothNumbers } from '../../domain/ledger/movement.ts'
import { fold } from '../../domain/shared/fold.ts'
import { weightStatistics } from '../../domain/weights/hundred-seed-weight.ts'
import type { ListRow } from '../../exchange/list-row.ts'
import { message } from '../../messages/message.ts'
import type { KnownGift, NumberedGift } from '../../queries/list-rows.ts'
import { cropWeight } from '../book/amounts.ts'
import { giftKey, type ListBook, withinCrop } from './list-book.ts'
import { type ListGift, OPEN, type Outcome, yearsOf } from './list-gift.ts'
import { LEAVE_OUT, type ListQuestions } from './list-questions.ts'

/** A row whose gift is in the book. */
export function isThere(number: string): Outcome {
  return { fate: 'there', because: message('import.in-book-as', { number }) }
}

/** Asks where the book may hold the gift already: by its number, by all that a row says, or not at all. */
export function heldAgainstBook(
  gift: ListGift,
  numbered: readonly NumberedGift[],
  dayIsSaid: boolean,
  book: ListBook,
  questions: ListQuestions,
): Outcome {
  const varietyId = 'known' in gift.variety ? gift.variety.known.id : null
  const there = numbered.find((one) => one.varietyId === varietyId)
  if (there !== undefined) return isThere(there.number)
  const same = sameInBook(gift, dayIsSaid, book)
  if (same !== null) return giftThere(gift, same, questions)
  const [other] = numbered
  return other === undefined ? { gift } : numberTaken(gift, other.number, questions)
}

/** Gifts of the book with the number of a row, but those that another institution numbered. */
export function numberedAlike(
  { passport }: ListRow,
  former: string | null,
  book: ListBook,
): readonly NumberedGift[] {
  const institution = passport.get('INSTCODE') ?? ''
  return (book.numbered.get(former ?? '') ?? []).filter(
    (gift) => gift.institution === '' || institution === '' || gift.institution === institution,
  )
}

/** The variety that a row names without doubt, or undefined: nothing is asked of a gift that is there. */
export function onlyNamedSo(
  book: ListBook,
  named: { readonly crop: string; readonly variety: string },
): number | undefined {
  const found = book.cropNames
    .called(named.crop)
    .flatMap(({ id }) => book.varieties.same.get(fold(withinCrop(id, named.variety))) ?? [])
  return found.length === 1 ? found[0]?.id : undefined
}

/** A number is no identity by itself: lists count 1, 2, 3. The keeper knows whether it is the same gift. */
function numberTaken(gift: ListGift, number: string, questions: ListQuestions): Outcome {
  const answer = questions.ask(gift.row, 'number', () => ({
    about: 'same',
    sentence: message('import.number-taken', { number }),
    choices: [
      { value: 'another', words: message('import.other-gifts') },
      { value: LEAVE_OUT, words: message('import.gifts-of-book') },
    ],
  }))
  if (answer === null) return OPEN
  return answer === 'another' ? { gift } : isThere(number)
}

/** A gift of the book says all that this row says: the keeper knows whether it is that one. */
function giftThere(gift: ListGift, number: string, questions: ListQuestions): Outcome {
  const answer = questions.ask(gift.row, 'there', () => ({
    about: 'same',
    sentence: message('import.gift-there', { number }),
    choices: [
      { value: LEAVE_OUT, words: message('import.yes-in-book') },
      { value: 'another', words: message('import.no-own-gifts') },
    ],
  }))
  if (answer === null) return OPEN
  return answer === 'another' ? { gift } : isThere(number)
}

/** A row that says word for word what an earlier one did: the same gift written twice, or two alike. */
export function saidBefore(
  text: string,
  row: number,
  questions: ListQuestions,
  seen: Map<string, number>,
): 'no' | 'open' | 'left-out' {
  const first = seen.get(text)
  if (first === undefined) {
    seen.set(text, row)
    return 'no'
  }
  const answer = questions.ask(row, 'same', () => ({
    about: 'same',
    sentence: message('import.said-before'),
    choices: [
      { value: LEAVE_OUT, words: message('import.yes-first-only') },
      { value: 'another', words: message('import.no-own-gifts') },
    ],
  }))
  if (answer === null) return 'open'
  return answer === LEAVE_OUT ? 'left-out' : 'no'
}

/** The number of a gift in the book that has the same variety, donor, harvest and seed, and the day where the row says one. */
function sameInBook(gift: ListGift, dayIsSaid: boolean, book: ListBook): string | null {
  if (!('known' in gift.variety)) return null
  const donorId = gift.donor !== null && 'known' in gift.donor ? gift.donor.known.id : null
  if (gift.donor !== null && donorId === null) return null
  const key = giftKey(gift.variety.known.id, donorId, ...yearsOf(gift.harvest))
  const same = (book.gifts.get(key) ?? []).find(
    (known) => (!dayIsSaid || known.receivedOn === gift.receivedOn) && holdsTheSame(known, gift),
  )
  return same?.number ?? null
}

function holdsTheSame(known: KnownGift, { amount, sample, crop }: ListGift): boolean {
  if (amount === null) return known.count === 0 && known.massMg === 0
  const weight =
    sample === null ? cropWeight(crop.hundredSeedWeightUg) : weightStatistics([sample]).hundredSeedWeight
  const both = bothNumbers(amount, weight)
  return amount.kind === 'mass' ? known.massMg === both.mass : known.count === both.count
}
