import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { letterParts } from '../../domain/letters/letter-words.ts'
import { message } from '../../messages/message.ts'
import type { DonorLetter, LetterGift } from '../../paper/donor-letters.ts'
import type { Reading } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { recallOrRefuse, whomToTell } from '../recall/recalls.ts'
import type { Taker } from '../recall/trace.ts'
import { textsFor } from './document.ts'
import { addressLines, lettersPdf, sameInAll } from './letters.ts'
import { seedOnPaper } from './seed-facts.ts'

type Recall = ReturnType<typeof recallOrRefuse>['row']

/** A letter to each who has recalled seed and agreed to be written to. Refuses where there is nobody to write to. */
export async function printRecallLetters(
  reading: Reading,
  input: ParsedInput<'recall.render-letters'>,
): Promise<Result<'recall.render-letters'>> {
  const { row, lots } = recallOrRefuse(reading, input.recallId)
  const { takers, ...howMany } = whomToTell(reading, lots)
  if (takers.length === 0) {
    refuse('nothing-to-print', message('recall.nobody-to-write', { people: howMany.inPerson }), {
      field: 'recallId',
    })
  }
  const letters = await Promise.all(takers.map((taker) => letterTo(reading, taker, row)))
  return {
    ...(await lettersPdf(reading, letters, `recall-${row.lotNumber}-${reading.today}.pdf`)),
    ...howMany,
  }
}

/** What was found and what to do about it, in the language of whoever reads it; the keeper's own words stay as they are. */
async function letterTo(
  reading: Reading,
  { who, had }: Taker,
  { reason, advice }: Recall,
): Promise<DonorLetter> {
  const texts = await textsFor(reading, who.personId)
  const { date, library, keepers } = sameInAll(reading, texts)
  const { keeper } = settingsOf(reading)
  const words = texts.text('recall.letter', {
    ...{ library, reason, advice },
    person: who.name ?? '',
    seeds: '{gifts}',
    keeper: keeper === '' ? keepers : keeper,
  })
  const gifts = had.map(({ lotNumber, affected, on, count, countedUnit: unit, ...seed }): LetterGift => {
    const amount = message('amount.seeds', { count, unit })
    return {
      number: lotNumber,
      name: seedOnPaper(seed, texts),
      facts: texts.text('recall.letter-had', { amount, on: { day: on } }),
      sofar: texts.text(`recall.letter-${affected}`),
      ...{ donorWords: '', terms: '', keptTo: '', keeping: '' },
    }
  })
  return {
    to: who.name ?? '',
    address: addressLines(who.address ?? ''),
    date,
    libraryName: library,
    parts: letterParts(words, (line) => line),
    gifts,
    texts,
  }
}
