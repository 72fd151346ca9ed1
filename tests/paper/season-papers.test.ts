import fc from 'fast-check'
import { expect, test } from 'vitest'
import { homeYearsTold } from '../../db/domain/viability/home-years.ts'
import { message } from '../../db/messages/message.ts'
import {
  FLOWING_MARGIN_MM,
  type FlowingPart,
  flowingDocument,
} from '../../db/paper/drawing/flowing-document.ts'
import { loadPaperFonts } from '../../db/paper/drawing/fonts.ts'
import { SHEET_MARGIN_MM } from '../../db/paper/drawing/ruled-sheet.ts'
import { RULER_AT_MM, rulerPage } from '../../db/paper/ruler-page.ts'
import { stocktakeSheet } from '../../db/paper/stocktake-sheet.ts'
import { type StorageCard, storageCardParts } from '../../db/paper/storage-cards.ts'
import { ENGLISH, saidInEnglish } from '../builders/in-english.ts'
import { bare, nastyName } from '../builders/packets.ts'
import { type ReadPdf, readPdf } from '../builders/read-pdf.ts'
import { sized } from '../support/sized.ts'

const fonts = loadPaperFonts()
/** Ink may pass its line by a hair: the boxes that are read are a little larger than the letter (seen, not specified). */
const HAIR_MM = 0.6
const FOOT_MM = 7

async function flowing(parts: readonly FlowingPart[], paper: 'a4' | 'letter' = 'a4') {
  const printed = await flowingDocument({
    parts,
    paper,
    title: 'Sheets',
    language: 'cs-CZ',
    fonts: await fonts,
  })
  return { ...printed, pdf: await readPdf(printed.bytes) }
}

function textOf(pdf: ReadPdf): string {
  return bare(pdf.pages.flatMap(({ characters }) => characters.map(({ character }) => character)).join(''))
}

function astray(pdf: ReadPdf): string[] {
  return pdf.pages.flatMap((page) =>
    page.characters
      .filter(({ character }) => character.trim() !== '')
      .filter(
        ({ ink }) =>
          ink.left < FLOWING_MARGIN_MM - HAIR_MM ||
          ink.right > page.widthMm - FLOWING_MARGIN_MM + HAIR_MM ||
          ink.top < FLOWING_MARGIN_MM - HAIR_MM ||
          ink.bottom > page.heightMm - FOOT_MM + HAIR_MM,
      )
      .map(({ character, ink }) => `${character} ${JSON.stringify(ink)}`),
  )
}

const card = (name: string): StorageCard => ({
  name,
  lotNumber: 'HL26-0001-A',
  places: [
    { place: 'In a cupboard, about 20 °C', how: 'In its packet.', years: 'about 4, between 2 and 9 years' },
    { place: 'In a freezer, about -18 °C', how: 'Only if dry.', years: name },
  ],
  notTold: '',
  pieces: false,
  howSure: [name],
  cautions: ['POISONOUS IF EATEN. Keep from children and animals.'],
  libraryName: name,
  texts: ENGLISH,
})

test('a how-to-keep card says its title and language, its years, and every caution', async () => {
  const { pdf, pages, warnings } = await flowing(storageCardParts([card('Runner bean ‘Žlutá Ελένη’')]))
  expect([pages, warnings, pdf.title, pdf.language]).toEqual([1, [], 'Sheets', 'cs-CZ'])
  const text = textOf(pdf)
  for (const words of [
    'Runner bean ‘Žlutá Ελένη’ · HL26-0001-A',
    'In a cupboard, about 20 °C: about 4, between 2 and 9 years',
    'POISONOUS IF EATEN',
    'take one without cobalt',
    'frost kills moist seed',
    'check your local seed law',
  ])
    expect(text).toContain(bare(words))
  pdf.close()
})

test('nasty names and long lists stay inside the margins, pages numbered, nothing cut', async () => {
  const names = fc.sample(nastyName, { numRuns: sized(24, 60), seed: 20261127 })
  const bars = names.slice(0, 20).map((label, value) => ({ label, value, words: `${value}` }))
  const long: FlowingPart = {
    name: message('paper.the-list'),
    texts: ENGLISH,
    blocks: names.flatMap((text, index) => [
      { text, face: 'semibold' as const, size: 13, before: 6, unbrokenWithNext: true },
      { text: `${text} ${text}`, face: 'regular' as const, size: 10, before: 0 },
      ...(index === 3 ? [{ bars }] : []),
    ]),
  }
  const { pdf, pages, warnings } = await flowing(
    [...storageCardParts(names.slice(0, 12).map(card)), long],
    'letter',
  )
  expect(astray(pdf)).toEqual([])
  const text = textOf(pdf)
  expect(text).not.toContain('…')
  expect(text).toMatch(/Page2of\d+$|Page\d+of\d+/)
  expect(pages).toBeGreaterThan(13)
  expect(warnings.map(saidInEnglish).join()).toContain('typeface has no')
  pdf.close()
})

test('the ruler page measures true, and moves with its offset', async () => {
  for (const offsetMm of [
    [0, 0],
    [1.5, -2],
  ] as const) {
    const { bytes } = await rulerPage({
      paper: 'a4',
      offsetMm,
      texts: ENGLISH,
      title: 'Ruler',
      language: 'en-GB',
      fonts: await fonts,
    })
    const pdf = await readPdf(bytes)
    const dpi = 300
    const raster = pdf.pages[0]?.raster(dpi)
    if (!raster) throw new Error('There should be a page.')
    const perMm = dpi / 25.4
    const dark = (xMm: number, yMm: number) =>
      (raster.data[(Math.round(yMm * perMm) * raster.width + Math.round(xMm * perMm)) * 4] ?? 255) < 128
    const [right, down] = offsetMm
    const [x, y] = [RULER_AT_MM.x + right, RULER_AT_MM.y + down]
    for (const at of [0.05, 50, 149.95]) expect(dark(x + at, y)).toBe(true)
    expect(dark(x + 151, y)).toBe(false)
    for (const at of [10, 100, 199.95]) expect(dark(x, y + at)).toBe(true)
    expect(dark(x, y + 201)).toBe(false)
    for (const at of [10, 100, 150]) {
      expect(dark(x + at, y + 4.5)).toBe(true)
      expect(dark(x + at - 1, y + 4.5)).toBe(false)
    }
    expect(textOf(pdf)).toContain(bare(`moved by ${right} mm to the right and ${down} mm down`))
    pdf.close()
  }
})

test('a ruled row grows with the text in its cells, so that nothing of it is lost', async () => {
  const names = fc.sample(nastyName, { numRuns: 40, seed: 20261127 })
  const lots = names.map((name, at) => ({ number: `HL26-${1000 + at}-A`, name, book: name }))
  const { bytes } = await stocktakeSheet({
    places: [{ path: names[0] ?? '', lots }],
    libraryName: 'Quillhaven Seed Library',
    texts: ENGLISH,
    date: '27 November 2026',
    paper: 'a4',
    title: 'Stocktake',
    language: 'en-GB',
    fonts: await fonts,
  })
  const pdf = await readPdf(bytes)
  const text = textOf(pdf)
  expect(text).not.toContain('…')
  for (const { number } of lots) expect(text).toContain(number)
  const plain = names.filter((name) => /^[\p{L}\d -]+$/u.test(name) && !/[א-ת؀-ۿ豆ね콩க\ue001]/u.test(name))
  for (const name of plain) expect(text).toContain(bare(name).slice(0, 12))
  for (const { character, ink } of pdf.pages.flatMap(({ characters }) => characters)) {
    if (character.trim() !== '') expect(ink.right).toBeLessThanOrEqual(210 - SHEET_MARGIN_MM + HAIR_MM)
  }
  pdf.close()
})

test('years at home are told with their doubt, and never further ahead than a home can promise', () => {
  const years = (low: number, middle: number, high: number) =>
    saidInEnglish(homeYearsTold({ low, middle, high }))
  expect(years(2.2, 4.4, 8.9)).toBe('about 4 years, between 2 and 9')
  expect(years(0.1, 1.2, 31)).toBe('about 1 year, between less than one and more than 20')
  expect(years(6, 240, 900)).toBe('more than 20 years, but perhaps only 6')
  expect(years(40, 240, 900)).toBe('more than 20 years')
  expect(years(0, 0, 0.3)).toBe('sow it this season')
  expect(years(0, 0.2, 3)).toBe('less than one year, between less than one and 3')
})
