import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fillLetter, shippedLetter, unknownFields } from '../../db/domain/letters/letter-words.ts'
import { type DonorLetter, donorLetters, LETTER_MARGINS_MM } from '../../db/paper/donor-letters.ts'
import { loadPaperFonts } from '../../db/paper/drawing/fonts.ts'
import type { PaperName } from '../../db/paper/drawing/page-sizes.ts'
import { SLIP_MARGIN_MM, type WithdrawalSlip, withdrawalSlips } from '../../db/paper/withdrawal-slips.ts'
import { ENGLISH, saidInEnglish } from '../builders/in-english.ts'
import { bare, nastyName } from '../builders/packets.ts'
import { type ReadPage, readPdf } from '../builders/read-pdf.ts'
import { sized } from '../support/sized.ts'

const FACTS = {
  donor: 'Zoë Brontë',
  gifts: 'Painted Quill',
  numbers: 'HL26-0001',
  received: '14 March 2026',
  date: '15 March 2026',
  library: 'Quillhaven Seed Library',
  keeping: 'We keep it cool.',
  keeper: '',
  keepers: 'the keepers',
}
const SHIPPED_LETTER = saidInEnglish(shippedLetter())

/** Ink may pass its line by a hair: the boxes that are read are a little larger than the letter (seen, not specified). */
const HAIR_MM = 0.6
const DOCUMENT = { title: 'Letters', language: 'en-GB' }

function letter(changes: Partial<DonorLetter> = {}): DonorLetter {
  return {
    to: FACTS.donor,
    address: ['3 Hollow Lane', 'Quillhaven'],
    date: FACTS.date,
    libraryName: FACTS.library,
    parts: fillLetter(SHIPPED_LETTER, FACTS),
    gifts: [gift(1)],
    texts: ENGLISH,
    ...changes,
  }
}

function gift(ordinal: number, name = 'Runner bean ‘Painted Quill’', donorWords = '') {
  const number = `HL26-${String(ordinal).padStart(4, '0')}`
  return {
    number,
    name,
    facts: 'harvested 2024 · 120 seeds',
    donorWords,
    terms: '',
    keptTo: '',
    keeping: '',
    sofar: '',
  }
}

function slip(changes: Partial<WithdrawalSlip> = {}): WithdrawalSlip {
  return {
    to: 'Teodor Ash',
    date: '14 March 2026',
    purpose: 'to grow',
    lines: [{ name: 'Pea ‘Hollow Lane Tall’', lotNumber: 'HL26-0002-A', amount: '20 seeds', cautions: [] }],
    promise: 'Promised back: 40 seeds, by 1 November 2026',
    texts: ENGLISH,
    libraryName: FACTS.library,
    ...changes,
  }
}

const print = async (letters: readonly DonorLetter[], paper: PaperName = 'a4') =>
  donorLetters({ letters, paper, ...DOCUMENT, fonts: await loadPaperFonts() })
const printSlips = async (slips: readonly WithdrawalSlip[], paper: PaperName = 'a4') =>
  withdrawalSlips({ slips, paper, ...DOCUMENT, fonts: await loadPaperFonts() })

const textOf = (pages: readonly ReadPage[]) =>
  bare(pages.flatMap(({ characters }) => characters.map(({ character }) => character)).join(''))

/** The letters of a page whose ink passes the margins; mm. */
function astray(page: ReadPage, margins: { side: number; top: number; bottom: number }): string[] {
  return page.characters
    .filter(({ character }) => character.trim() !== '')
    .filter(
      ({ ink }) =>
        ink.left < margins.side - HAIR_MM ||
        ink.right > page.widthMm - margins.side + HAIR_MM ||
        ink.top < margins.top - HAIR_MM ||
        ink.bottom > page.heightMm - margins.bottom + HAIR_MM,
    )
    .map(({ character, ink }) => `${character} ${JSON.stringify(ink)}`)
}
const LETTER = { ...LETTER_MARGINS_MM, bottom: 9 }
const SLIP = { side: SLIP_MARGIN_MM, top: SLIP_MARGIN_MM, bottom: SLIP_MARGIN_MM }

test.each([
  ['a4', 210, 297],
  ['letter', 215.9, 279.4],
] as const)(
  'a letter on %s says its title and language, and reads back whole',
  async (paper, width, height) => {
    const { bytes, pages, warnings } = await print([letter()], paper)
    const pdf = await readPdf(bytes)
    expect([pages, warnings, pdf.title, pdf.language]).toEqual([1, [], 'Letters', 'en-GB'])
    expect(pdf.pages[0]?.widthMm).toBeCloseTo(width, 1)
    expect(pdf.pages[0]?.heightMm).toBeCloseTo(height, 1)
    const text = textOf(pdf.pages)
    for (const words of ['Dear Zoë Brontë,', '3 Hollow Lane', 'HL26-0001', 'Runner bean ‘Painted Quill’'])
      expect(text).toContain(bare(words))
    expect(text.endsWith(bare(`With warm thanks, ${FACTS.library}`))).toBe(true)
    pdf.close()
  },
)

test('accents, Greek, Cyrillic and other scripts read back, and what no font has is named', async () => {
  const names = [
    'Hrášek Ďáblík žluťoučký',
    'Κολοκύθι της Γιαγιάς',
    'Огурец Ёжик їжак',
    'Tomate 🍅 番茄 토마토',
    'टमाटर लाल',
    'Bean தக்காளி',
  ]
  const { bytes, warnings } = await print([letter({ gifts: names.map((name, at) => gift(at, name)) })])
  const pdf = await readPdf(bytes)
  const text = textOf(pdf.pages)
  for (const name of names.slice(0, 5)) expect(text).toContain(bare(name))
  expect(warnings.map(saidInEnglish)).toEqual([
    'The letter to Zoë Brontë: the typeface has no த க் கா ளி. A box is printed in its place: write it by hand.',
  ])
  pdf.close()
})

test('many gifts with long stories run over numbered pages, each whole, inside the margins', async () => {
  const story = 'Carried over the pass in a tobacco tin, and sown each spring since. '.repeat(9).trim()
  const gifts = Array.from({ length: 24 }, (_, at) => gift(at + 1, `Pea ‘Number ${at + 1}’`, story))
  const { bytes, pages } = await print([letter({ gifts }), letter({ to: 'Ilka Brandt' })])
  const pdf = await readPdf(bytes)
  expect(pages).toBeGreaterThan(4)
  const text = textOf(pdf.pages)
  for (const { number } of gifts) expect(text).toContain(number)
  expect(text.split(bare('You told us: Carried')).length - 1).toBe(24)
  expect(textOf(pdf.pages.slice(1, 2))).toContain(bare(`Page 2 of ${pages - 1}`))
  expect(textOf(pdf.pages.slice(-1))).not.toContain('Page')
  for (const page of pdf.pages) expect(astray(page, LETTER)).toEqual([])
  pdf.close()
})

test('nasty names stay inside the margins of letters and slips, and are never cut', async () => {
  const names = fc.sample(nastyName, { numRuns: sized(12, 200), seed: 20261125 })
  const letters = names.map((to, at) =>
    letter({ to, libraryName: names.at(-at) ?? '', gifts: [gift(at, to, to)] }),
  )
  const slips = names.map((to) =>
    slip({ to, promise: to, lines: [{ name: to, lotNumber: 'HL26-0001-A', amount: '9', cautions: [to] }] }),
  )
  const printed = await readPdf((await print(letters, 'letter')).bytes)
  for (const page of printed.pages) expect(astray(page, LETTER)).toEqual([])
  expect(textOf(printed.pages)).not.toContain('…')
  printed.close()
  const slipped = await readPdf((await printSlips(slips)).bytes)
  for (const page of slipped.pages) expect(astray(page, SLIP)).toEqual([])
  slipped.close()
})

test('two slips share a page, and one with many lots takes pages of its own', async () => {
  expect((await printSlips([slip(), slip(), slip()])).pages).toBe(2)
  expect((await printSlips([slip(), slip()], 'letter')).pages).toBe(1)
  const lines = Array.from({ length: 40 }, (_, at) => ({
    name: `Pea ‘Number ${at}’`,
    lotNumber: `HL26-${1000 + at}-A`,
    amount: '20 seeds',
    cautions: ['POISONOUS IF EATEN. Keep from children and animals.'],
  }))
  const { bytes, pages } = await printSlips([slip({ lines }), slip()])
  const pdf = await readPdf(bytes)
  expect(pages).toBeGreaterThan(2)
  const text = textOf(pdf.pages)
  for (const { lotNumber } of lines) expect(text).toContain(lotNumber)
  expect(text.split(bare('For sowing only; check your local seed law')).length - 1).toBe(2)
  for (const page of pdf.pages) expect(astray(page, SLIP)).toEqual([])
  pdf.close()
})

test('words that miss a fact stay polite, and unknown fields stay as typed', () => {
  const filled = fillLetter(
    'Dear {donor},\n{keeper}\n\nAsk {keeper} of {library}. {what}\n{gifts}\n{ Numbers }',
    FACTS,
  )
  expect(filled).toEqual([
    { kind: 'text', lines: ['Dear Zoë Brontë,'] },
    { kind: 'text', lines: ['Ask the keepers of Quillhaven Seed Library. {what}'] },
    { kind: 'gifts' },
    { kind: 'text', lines: ['HL26-0001'] },
  ])
  expect(unknownFields('{donor} {what} {what} {} {toString}')).toEqual(['{what}', '{}', '{toString}'])
  expect(unknownFields(SHIPPED_LETTER)).toEqual([])
})
