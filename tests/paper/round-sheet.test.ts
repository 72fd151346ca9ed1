import { expect, test } from 'vitest'
import { loadPaperFonts } from '../../db/paper/drawing/fonts.ts'
import type { PaperName } from '../../db/paper/drawing/page-sizes.ts'
import { SHEET_MARGIN_MM } from '../../db/paper/drawing/ruled-sheet.ts'
import { roundSheet, type SheetStop } from '../../db/paper/round-sheet.ts'
import { ENGLISH } from '../builders/in-english.ts'
import { bare } from '../builders/packets.ts'
import { type ReadPage, readPdf } from '../builders/read-pdf.ts'

/** Ink may pass its line by a hair: the boxes that are read are a little larger than the letter (seen, not specified). */
const HAIR_MM = 0.6

function stop(changes: Partial<SheetStop> = {}): SheetStop {
  return {
    path: 'Back room / Fridge',
    standing: 'Every 30 days; never walked to; due now',
    looks: ['Pests', 'Drying gel', 'Reading: ______ °C ______ %'],
    lotNumbers: ['HL26-0001-A', 'HL26-0002-A'],
    ...changes,
  }
}

async function print(stops: readonly SheetStop[], paper: PaperName = 'a4') {
  const made = await roundSheet({
    stops,
    meanings: ['Pests: insects, holes or dust in the seed.'],
    cautions: ['Blue gel usually holds cobalt chloride.'],
    libraryName: 'Quillhaven Seed Library',
    texts: ENGLISH,
    date: '14 March 2026',
    paper,
    title: 'Round sheet',
    language: 'en-GB',
    fonts: await loadPaperFonts(),
  })
  return { ...made, read: await readPdf(made.bytes) }
}

const textOf = ({ characters }: ReadPage) => bare(characters.map(({ character }) => character).join(''))

test.each(['a4', 'letter'] as const)(
  'says what to look at in each place, and what to mind, inside its margins, on %s',
  async (paper) => {
    const { read, pages, warnings } = await print([stop()], paper)
    const [page] = read.pages
    if (page === undefined) throw new Error('No page')
    const text = textOf(page)
    for (const words of [
      'Back room / Fridge',
      'never walked to',
      'HL26-0002-A',
      'Drying gel',
      'holes or dust in the seed',
      'cobalt chloride',
    ])
      expect(text).toContain(bare(words))
    for (const { ink, character } of page.characters) {
      if (character.trim() === '') continue
      expect(ink.left).toBeGreaterThanOrEqual(SHEET_MARGIN_MM - HAIR_MM)
      expect(ink.right).toBeLessThanOrEqual(page.widthMm - SHEET_MARGIN_MM + HAIR_MM)
      expect(ink.bottom).toBeLessThanOrEqual(page.heightMm - SHEET_MARGIN_MM + HAIR_MM)
    }
    expect([pages, warnings]).toEqual([1, []])
    read.close()
  },
)

test('keeps each place on one page, and counts lots that are too many to list', async () => {
  const lotNumbers = Array.from({ length: 61 }, (_, index) => `HL26-${1000 + index}-A`)
  const stops = Array.from({ length: 14 }, (_, index) => stop({ path: `Shelf ${index + 1}.`, lotNumbers }))
  const { read } = await print(stops)
  expect(read.pages.length).toBeGreaterThan(1)
  const heads = read.pages.map((page) => textOf(page).split(bare('61 lots.')).length - 1)
  const lastRows = read.pages.map((page) => textOf(page).split(bare('Reading:')).length - 1)
  expect(heads).toEqual(lastRows)
  expect(heads.reduce((sum, count) => sum + count, 0)).toBe(14)
  read.close()
})

test('is not made of nothing', async () => {
  await expect(print([])).rejects.toThrow(RangeError)
})
