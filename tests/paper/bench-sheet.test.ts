import { expect, test } from 'vitest'
import { type BenchTest, benchSheet } from '../../db/paper/bench-sheet.ts'
import { loadPaperFonts } from '../../db/paper/drawing/fonts.ts'
import type { PaperName } from '../../db/paper/drawing/page-sizes.ts'
import { SHEET_MARGIN_MM } from '../../db/paper/drawing/ruled-sheet.ts'
import { ENGLISH } from '../builders/in-english.ts'
import { bare } from '../builders/packets.ts'
import { type ReadPage, readPdf } from '../builders/read-pdf.ts'

/** Ink may pass its line by a hair: the boxes that are read are a little larger than the letter (seen, not specified). */
const HAIR_MM = 0.6

function bench(changes: Partial<BenchTest> = {}): BenchTest {
  return {
    name: 'Pea ‘Hollow Lane Tall’',
    lotNumber: 'HL26-0002-A',
    laidOut: 'laid out on 14 March 2026 · rolled paper towel · 20 °C',
    cautions: [],
    left: [100, 99, 98, 97],
    counts: ['19 March 2026', '', '22 March 2026 (last)'],
    ...changes,
  }
}

async function print(tests: readonly BenchTest[], paper: PaperName = 'a4') {
  const made = await benchSheet({
    tests,
    libraryName: 'Quillhaven Seed Library',
    texts: ENGLISH,
    date: '14 March 2026',
    paper,
    title: 'Bench sheet',
    language: 'en-GB',
    fonts: await loadPaperFonts(),
  })
  return { ...made, read: await readPdf(made.bytes) }
}

const textOf = ({ characters }: ReadPage) => bare(characters.map(({ character }) => character).join(''))

test.each(['a4', 'letter'] as const)(
  'says what each dish is and when it is counted, inside its margins, on %s',
  async (paper) => {
    const caution = 'Treated seed: poisonous, not for food or feed.'
    const { read, pages, warnings } = await print([bench({ cautions: [caution] })], paper)
    const [page] = read.pages
    if (page === undefined) throw new Error('No page')
    const text = textOf(page)
    for (const words of [
      'Hollow Lane Tall',
      'HL26-0002-A',
      caution,
      '19 March 2026',
      '22 March 2026 (last)',
      '4: 97 left',
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

test('keeps each test on one page', async () => {
  const tests = Array.from({ length: 5 }, (_, index) => bench({ lotNumber: `HL26-000${index + 1}-A` }))
  const { read } = await print(tests)
  expect(read.pages.length).toBeGreaterThan(1)
  for (const { lotNumber } of tests) {
    const on = read.pages.filter((page) => textOf(page).includes(bare(lotNumber)))
    expect(on).toHaveLength(1)
  }
  const lastRows = read.pages.map((page) => textOf(page).split(bare('22 March 2026 (last)')).length - 1)
  const heads = read.pages.map((page) => textOf(page).split(bare('Hollow Lane Tall')).length - 1)
  expect(lastRows).toEqual(heads)
  read.close()
})

test('only the first count to come says how many are still there', async () => {
  const { read } = await print([bench({ left: [20], counts: ['', '22 March 2026 (last)'] })])
  expect(read.pages.map((page) => textOf(page).split(bare('20 left')).length - 1)).toEqual([1])
  read.close()
})

test('is not made of nothing', async () => {
  await expect(print([])).rejects.toThrow(RangeError)
})
