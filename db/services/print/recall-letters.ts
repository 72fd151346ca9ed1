import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { letterParts } from '../../domain/letters/letter-words.ts'
import type { Affected } from '../../domain/shared/closed-sets.ts'
import { type Message, message } from '../../messages/message.ts'
import type { DonorLetter, LetterGift } from '../../paper/donor-letters.ts'
import { duplicateRows } from '../../queries/duplicate-rows.ts'
import type { Reading } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { recallOrRefuse, whomToTell } from '../recall/recalls.ts'
import type { FollowedLot, Taker } from '../recall/trace.ts'
import { textsFor } from './document.ts'
import { addressLines, lettersPdf, sameInAll } from './letters.ts'
import { seedOnPaper } from './seed-facts.ts'

type Recall = ReturnType<typeof recallOrRefuse>['row']

/**
 * A letter to each who has recalled seed and agreed to be written to, and to each who holds a duplicate of it by agreement.
 * Refuses where there is nobody to write to.
 */
export async function printRecallLetters(
  reading: Reading,
  input: ParsedInput<'recall.render-letters'>,
): Promise<Result<'recall.render-letters'>> {
  const { row, lots } = recallOrRefuse(reading, input.recallId)
  const { takers, ...howMany } = whomToTell(reading, lots)
  const held = Map.groupBy(
    lots.filter((lot) => lot.row.role === 'duplicate-elsewhere' && lot.row.balanceCount > 0),
    (lot) => lot.row.heldBy,
  )
  if (takers.length + held.size === 0) {
    refuse('nothing-to-print', message('recall.nobody-to-write', { people: howMany.inPerson }), {
      field: 'recallId',
    })
  }
  const letters = await Promise.all([
    ...takers.map((taker) => letterToTaker(reading, taker, row)),
    ...[...held].map(([holder, theirs]) => letterToHolder(reading, holder, theirs, row)),
  ])
  return {
    ...(await lettersPdf(reading, letters, `recall-${row.lotNumber}-${reading.today}.pdf`)),
    ...howMany,
  }
}

function letterToTaker(reading: Reading, { who, had }: Taker, row: Recall): Promise<DonorLetter> {
  const gifts = had.map((taken) => {
    const { lotNumber: number, affected, on, count, countedUnit: unit } = taken
    const facts = message('recall.letter-had', {
      amount: message('amount.seeds', { count, unit }),
      on: { day: on },
    })
    return { number, affected, facts, seed: taken }
  })
  return letterTo(
    reading,
    { personId: who.personId, name: who.name ?? '', address: who.address ?? '' },
    gifts,
    row,
  )
}

/** How the holder is reached stands in the terms of the duplicate, which were noted for this. */
function letterToHolder(
  reading: Reading,
  name: string,
  held: readonly FollowedLot[],
  row: Recall,
): Promise<DonorLetter> {
  const [contact = ''] = held.flatMap((lot) =>
    duplicateRows(reading.sqlite, lot.row.lotId).map((terms) => terms.contact ?? ''),
  )
  const gifts = held.map(({ row: lot, affected }) => {
    const { lotNumber: number, balanceCount: count, countedUnit: unit } = lot
    const facts = message('recall.letter-held', { amount: message('amount.seeds', { count, unit }) })
    return { number, affected, facts, seed: lot }
  })
  return letterTo(reading, { personId: null, name, address: contact }, gifts, row)
}

interface Recalled {
  readonly number: string
  readonly affected: Affected
  readonly facts: Message
  readonly seed: { readonly crop: string; readonly variety: string }
}

/** What was found and what to do about it, in the language of whoever reads it; the keeper's own words stay as they are. */
async function letterTo(
  reading: Reading,
  to: { readonly personId: number | null; readonly name: string; readonly address: string },
  recalled: readonly Recalled[],
  { reason, advice }: Recall,
): Promise<DonorLetter> {
  const texts = await textsFor(reading, to.personId)
  const { date, library, keepers } = sameInAll(reading, texts)
  const { keeper } = settingsOf(reading)
  const words = texts.text('recall.letter', {
    ...{ library, reason, advice },
    person: to.name,
    seeds: '{gifts}',
    keeper: keeper === '' ? keepers : keeper,
  })
  const gifts = recalled.map(
    ({ number, affected, facts, seed }): LetterGift => ({
      number,
      name: seedOnPaper(seed, texts),
      facts: texts.say(facts),
      sofar: texts.text(`recall.letter-${affected}`),
      ...{ donorWords: '', terms: '', keptTo: '', keeping: '' },
    }),
  )
  return {
    to: to.name,
    address: addressLines(to.address),
    date,
    libraryName: library,
    parts: letterParts(words, (line) => line),
    gifts,
    texts,
  }
}
