import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { giftSoFar } from '../../domain/letters/gift-so-far.ts'
import { keepingTold, oneKept } from '../../domain/letters/keeping.ts'
import { fillLetter, type LetterFacts, shippedLetter } from '../../domain/letters/letter-words.ts'
import { keptToOurselves, limitsInShort } from '../../domain/terms/gift-limits.ts'
import { type Message, message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { type DonorLetter, donorLetters, type LetterGift } from '../../paper/donor-letters.ts'
import { limitsOfAccession } from '../../queries/gift-limits.ts'
import { rowWith } from '../../queries/rows.ts'
import {
  giftsOfLetters,
  type LetterGiftRow,
  latestGiftToThank,
  type TrayRow,
} from '../../queries/tray-rows.ts'
import { giftSince } from '../../queries/year-figures.ts'
import { person, personContact } from '../../schema/reference-tables.ts'
import type { Reading } from '../book/context.ts'
import { harvestOf } from '../book/new-lot.ts'
import { settingsOf } from '../book/settings.ts'
import { documentFacts, made, paperTexts, textsFor } from './document.ts'
import { unknownTold, type Words, wordsOf } from './letter-words.ts'
import { amountOnPaper, harvestOnPaper, seedOnPaper } from './seed-facts.ts'

/** Letters for items of the tray: one for each donor, with all their gifts; those held back are named in the warnings. */
export async function printLetters(
  reading: Reading,
  rows: readonly TrayRow[],
): Promise<Result<'tray.render'>> {
  const { letterWords, keeper } = settingsOf(reading)
  const words = await wordsOf(reading, { words: letterWords, keeper })
  const giftsOf = new Map<number, number[]>()
  const heldBack: Message[] = []
  for (const { donorId, donor, mayWrite, accessionId } of rows) {
    if (donorId === null || accessionId === null || mayWrite !== 1) {
      heldBack.push(donor === null ? message('letters.no-name') : message('letters.no-consent', { donor }))
    } else giftsOf.set(donorId, [...(giftsOf.get(donorId) ?? []), accessionId])
  }
  const letters: DonorLetter[] = []
  for (const [donorId, accessionIds] of giftsOf) {
    const gifts = giftsOfLetters(reading.sqlite, accessionIds)
    if (gifts.length > 0) letters.push(await letterTo(reading, donorId, gifts, words))
    else heldBack.push(message('letters.undone'))
  }
  if (letters.length === 0) {
    refuse('nothing-to-print', heldBack[0] ?? message('letters.none'), { field: 'itemIds' })
  }
  const printed = await lettersPdf(reading, letters, `letters-${reading.today}.pdf`)
  return { ...printed, warnings: [...heldBack, ...unknownTold(words.words), ...printed.warnings] }
}

/** The letter in words not yet kept, for the latest donor who may be written to, or an invented one. */
export async function previewLetter(
  reading: Reading,
  input: ParsedInput<'letter.render'>,
): Promise<Result<'letter.render'>> {
  const words = await wordsOf(reading, input)
  const real = latestGiftToThank(reading.sqlite)
  const letter =
    real === undefined
      ? inventedLetter(reading, words, await paperTexts(reading))
      : await letterTo(reading, real.donorId, giftsOfLetters(reading.sqlite, [real.accessionId]), words)
  const printed = await lettersPdf(reading, [letter], `letter-${reading.today}.pdf`)
  return {
    ...printed,
    to: real === undefined ? '' : letter.to,
    warnings: [...unknownTold(words.words), ...printed.warnings],
  }
}

/** Letters as one PDF. */
export async function lettersPdf(reading: Reading, letters: readonly DonorLetter[], fileName: string) {
  const tellers = letters.map(({ texts }) => texts)
  const facts = await documentFacts(reading, message('paper.title-letters'), tellers)
  return made(await donorLetters({ letters, ...facts }), fileName)
}

/**
 * The letter to a donor, in their language. The one document that holds how to reach them.
 *
 * Words that the library wrote itself stay as they are, and so that their sentences stay whole, what is filled into them is in
 * the library's language.
 */
async function letterTo(
  reading: Reading,
  donorId: number,
  rows: readonly LetterGiftRow[],
  words: Words,
): Promise<DonorLetter> {
  const who = rowWith(reading.sqlite, person, { id: donorId })
  const contact = rowWith(reading.sqlite, personContact, { personId: donorId })
  const texts = await textsFor(reading, donorId)
  const within = words.words === null ? texts : await paperTexts(reading)
  const list = (values: readonly string[]) => within.value({ list: values })
  const days = [...new Set(rows.map((row) => row.receivedOn))].map((day) => within.value({ day }))
  const facts: LetterFacts = {
    ...sameInAll(reading, within),
    donor: who?.name ?? within.text('letters.friend'),
    gifts: list([...new Set(rows.map((row) => row.variety))]),
    numbers: list(rows.map((row) => row.number)),
    received: list(days),
    keeping: within.say(keepingTold(rows.map(({ keeping }) => keeping))),
    keeper: words.keeper,
  }
  return {
    to: facts.donor,
    address: addressLines(contact?.address ?? ''),
    date: texts.value({ day: reading.today }),
    libraryName: facts.library,
    parts: fillLetter(words.words ?? texts.say(shippedLetter()), facts),
    gifts: rows.map((row) => shownGift(reading, row, texts)),
    texts,
  }
}

/** An address as it stands in a letter, line by line. */
export function addressLines(address: string): string[] {
  return address
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
}

/** What is filled in alike in every letter. */
export function sameInAll(reading: Reading, texts: Texts) {
  return {
    date: texts.value({ day: reading.today }),
    library: settingsOf(reading).libraryName,
    keepers: texts.text('letters.keepers'),
  }
}

function inventedLetter(reading: Reading, { words, keeper }: Words, texts: Texts): DonorLetter {
  const same = sameInAll(reading, texts)
  const [crop, variety] = [texts.text('letters.made-up-crop'), texts.text('letters.made-up-variety')]
  const facts: LetterFacts = {
    ...same,
    donor: texts.text('letters.made-up-donor'),
    gifts: variety,
    numbers: 'XX-0001',
    received: same.date,
    keeping: texts.say(keepingTold(['shared'])),
    keeper,
  }
  const seeds = texts.value({ seeds: 120 })
  const gift: LetterGift = {
    number: facts.numbers,
    name: `${crop} ‘${variety}’`,
    facts: `${texts.text('letters.harvested', { year: '2024' })} · ${seeds}`,
    donorWords: texts.text('letters.made-up-story'),
    keeping: '',
    terms: '',
    keptTo: '',
    sofar: texts.text('letters.so-far-takers', { people: 4 }),
  }
  return {
    to: facts.donor,
    address: [],
    date: same.date,
    libraryName: same.library,
    parts: fillLetter(words ?? texts.say(shippedLetter()), facts),
    gifts: [gift],
    texts,
  }
}

function shownGift(reading: Reading, row: LetterGiftRow, texts: Texts): LetterGift {
  const harvest = harvestOf(row)
  const year = harvestOnPaper(harvest, texts)
  const kept = oneKept(row.keeping)
  const limits = limitsOfAccession(reading.sqlite, row.accessionId)
  const keptTo = [...limitsInShort(limits), ...keptToOurselves(limits)].map(texts.say).join(' ')
  const facts = [
    harvest.kind === 'unknown' ? '' : texts.text('letters.harvested', { year }),
    amountOnPaper(row, texts),
    row.grownAt === '' ? '' : texts.text('letters.grown-at', { place: row.grownAt }),
  ]
  return {
    number: row.number,
    name: seedOnPaper(row, texts),
    facts: facts.filter((fact) => fact !== '').join(' · '),
    donorWords: row.donorWords,
    keeping: kept === null ? '' : texts.say(kept),
    terms: row.terms,
    keptTo: keptTo === '' ? '' : texts.text('terms.kept-to', { limits: keptTo }),
    sofar: giftSoFar(giftSince(reading.sqlite, row.accessionId)).map(texts.say).join(' '),
  }
}
