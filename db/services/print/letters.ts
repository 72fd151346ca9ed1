import { eq } from 'drizzle-orm'
import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { aboutCount, countInWords, type Manner, massShown } from '../../domain/amounts/in-words.ts'
import { milligrams } from '../../domain/amounts/mass.ts'
import { countedUnit } from '../../domain/crops/counted-unit.ts'
import { harvestInWords } from '../../domain/dates/harvest-year.ts'
import { sofarInWords } from '../../domain/letters/gift-so-far.ts'
import { keepingInWords, oneKeptInWords } from '../../domain/letters/keeping.ts'
import { fillLetter, type LetterFacts, SHIPPED_LETTER } from '../../domain/letters/letter-words.ts'
import { type DonorLetter, donorLetters, type LetterGift } from '../../paper/donor-letters.ts'
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
import { dayOf, documentFacts, made } from './document.ts'
import { unknownSentence, type Words, wordsOf } from './letter-words.ts'

/** Letters for items of the tray: one for each donor, with all their gifts; those held back are named in the warnings. */
export async function printLetters(
  reading: Reading,
  rows: readonly TrayRow[],
): Promise<Result<'tray.render'>> {
  const words = wordsOf(reading)
  const giftsOf = new Map<number, number[]>()
  const heldBack: string[] = []
  for (const { donorId, donor, mayWrite, accessionId } of rows) {
    if (donorId === null || accessionId === null || mayWrite !== 1) {
      heldBack.push(
        `No letter to ${donor ?? 'a donor who is not named'}: they have not agreed to be written to.`,
      )
    } else giftsOf.set(donorId, [...(giftsOf.get(donorId) ?? []), accessionId])
  }
  const letters: DonorLetter[] = []
  for (const [donorId, accessionIds] of giftsOf) {
    const gifts = giftsOfLetters(reading.sqlite, accessionIds)
    if (gifts.length > 0) letters.push(letterTo(reading, donorId, gifts, words))
    else heldBack.push('A letter was left out: its gifts were taken back.')
  }
  if (letters.length === 0) {
    refuse('nothing-to-print', heldBack[0] ?? 'There is no letter to print.', { field: 'itemIds' })
  }
  const unknown = unknownSentence(words.words)
  const printed = await lettersPdf(reading, letters, `letters-${reading.today}.pdf`)
  return { ...printed, warnings: [...heldBack, ...(unknown === null ? [] : [unknown]), ...printed.warnings] }
}

/** The letter in words not yet kept, for the latest donor who may be written to, or an invented one. */
export async function previewLetter(
  reading: Reading,
  input: ParsedInput<'letter.render'>,
): Promise<Result<'letter.render'>> {
  const words = { ...input, words: input.words === '' ? SHIPPED_LETTER : input.words }
  const real = latestGiftToThank(reading.sqlite)
  const letter =
    real === undefined
      ? inventedLetter(reading, words)
      : letterTo(reading, real.donorId, giftsOfLetters(reading.sqlite, [real.accessionId]), words)
  const printed = await lettersPdf(reading, [letter], `letter-${reading.today}.pdf`)
  const unknown = unknownSentence(words.words)
  return {
    ...printed,
    to: real === undefined ? '' : letter.to,
    warnings: [...(unknown === null ? [] : [unknown]), ...printed.warnings],
  }
}

async function lettersPdf(reading: Reading, letters: readonly DonorLetter[], fileName: string) {
  return made(
    await donorLetters({ letters, ...(await documentFacts(reading, 'Thank-you letters')) }),
    fileName,
  )
}

/** The letter to a donor. The one document that holds how to reach them. */
function letterTo(
  reading: Reading,
  donorId: number,
  rows: readonly LetterGiftRow[],
  { words, keeper }: Words,
): DonorLetter {
  const who = reading.db.select().from(person).where(eq(person.id, donorId)).get()
  const contact = reading.db.select().from(personContact).where(eq(personContact.personId, donorId)).get()
  const day = dayOf(reading)
  const { libraryName } = settingsOf(reading)
  const facts: LetterFacts = {
    donor: who?.name ?? 'friend of the library',
    gifts: listed([...new Set(rows.map((row) => row.variety))]),
    numbers: listed(rows.map((row) => row.number)),
    received: listed([...new Set(rows.map((row) => row.receivedOn))].map(day)),
    keeping: keepingInWords(rows.map(({ keeping }) => keeping)),
    date: day(reading.today),
    library: libraryName,
    keeper,
  }
  const address = (contact?.address ?? '').split('\n').map((line) => line.trim())
  return {
    to: facts.donor,
    address: address.filter((line) => line !== ''),
    date: facts.date,
    libraryName,
    parts: fillLetter(words, facts),
    gifts: rows.map((row) => shownGift(reading, row)),
  }
}

function inventedLetter(reading: Reading, { words, keeper }: Words): DonorLetter {
  const { libraryName } = settingsOf(reading)
  const date = dayOf(reading)(reading.today)
  const facts: LetterFacts = {
    donor: 'A. Donor',
    gifts: 'Painted Quill',
    numbers: 'XX-0001',
    received: date,
    keeping: keepingInWords(['shared']),
    date,
    library: libraryName,
    keeper,
  }
  const gift: LetterGift = {
    number: facts.numbers,
    name: 'Runner bean ‘Painted Quill’',
    facts: 'harvested 2024 · 120 seeds',
    donorWords: 'A made-up gift, to show where the list stands.',
    keeping: '',
    terms: '',
    sofar: 'So far 4 people took seed of it.',
  }
  return { to: facts.donor, address: [], date, libraryName, parts: fillLetter(words, facts), gifts: [gift] }
}

function shownGift(reading: Reading, row: LetterGiftRow): LetterGift {
  const harvest = harvestOf(row)
  const facts = [
    harvest.kind === 'unknown' ? '' : `harvested ${harvestInWords(harvest)}`,
    amountInWords(row, settingsOf(reading)),
    row.grownAt === '' ? '' : `grown at ${row.grownAt}`,
  ]
  return {
    number: row.number,
    name: `${row.crop} ‘${row.variety}’`,
    facts: facts.filter((fact) => fact !== '').join(' · '),
    donorWords: row.donorWords,
    keeping: oneKeptInWords(row.keeping),
    terms: row.terms,
    sofar: sofarInWords(giftSince(reading.sqlite, row.accessionId)),
  }
}

/** An amount by the number that was observed: '12.5 g', '50 seeds', 'about 200 seeds'. */
export function amountInWords(
  row: Pick<LetterGiftRow, 'count' | 'massMg' | 'measured' | 'countedUnit'>,
  manner: Manner,
): string {
  const unit = countedUnit(row.countedUnit)
  if (row.measured === 'mass') return massShown(milligrams(row.massMg), manner)
  if (row.measured === 'estimate') return `${aboutCount(row.count, 0.25, manner)} ${unit.many}`
  return countInWords(row.count, unit, manner)
}

function listed(texts: readonly string[]): string {
  return new Intl.ListFormat('en-GB', { type: 'conjunction' }).format(texts)
}
