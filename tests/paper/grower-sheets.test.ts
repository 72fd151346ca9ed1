import fc from 'fast-check'
import { expect, test } from 'vitest'
import { FLOWING_MARGIN_MM, flowingDocument } from '../../db/paper/drawing/flowing-document.ts'
import { loadPaperFonts } from '../../db/paper/drawing/fonts.ts'
import { type GrowerVariety, growerSheetParts } from '../../db/paper/grower-sheets.ts'
import { ENGLISH } from '../builders/in-english.ts'
import { bare, nastyName } from '../builders/packets.ts'
import { readPdf } from '../builders/read-pdf.ts'

/** Page numbers stand in the lower margin. */
const FOOT_MM = 7
/** Ink may pass its line by a hair: the boxes that are read are a little larger than the letter (seen, not specified). */
const HAIR_MM = 0.6

async function printed(varieties: readonly GrowerVariety[]) {
  const { bytes, warnings } = await flowingDocument({
    parts: growerSheetParts([
      {
        to: 'Tamsin Lugg',
        garden: 'Orrin strip',
        season: 2027,
        bringBackBy: 'the end of 2027',
        varieties,
        libraryName: 'Quay Seed',
        texts: ENGLISH,
      },
    ]),
    paper: 'a4',
    title: 'Grower sheets',
    language: 'en-GB',
    fonts: await loadPaperFonts(),
  })
  const { pages } = await readPdf(bytes)
  const texts = pages.map(({ characters }) => bare(characters.map(({ character }) => character).join('')))
  return { pages, texts, warnings }
}

const variety = (name: string, text: string): GrowerVariety => ({
  name,
  numbers: `HL26-0001 · ${name}`,
  advice: ['Sow', 'Keep apart', 'Select', 'Harvest and dry'].map((heading) => ({ heading, text })),
  cautions: ['Treated seed is poisonous.'],
})

test('a variety that fits a page stands on one, from its name to the lines to write on', async () => {
  const names = ['Alder', 'Birch', 'Cedar', 'Dogwood', 'Elder', 'Furze']
  const words = 'Grow it on a square of 40 cm for each, and tell us what went wrong. '.repeat(9)
  const { texts } = await printed(names.map((name) => variety(name, words)))
  expect(texts.length).toBeGreaterThan(1)
  for (const text of texts) {
    const there = names.filter((name) => text.includes(name))
    expect(text.split(bare('What went wrong: ____')).length - 1).toBe(there.length)
    expect(text.split(bare('Harvest and dry')).length - 1).toBe(there.length)
  }
  expect(names.map((name) => texts.filter((text) => text.includes(name)).length)).toEqual(names.map(() => 1))
})

test('headings stand in the margin of their text, on its first line', async () => {
  const { pages } = await printed([variety('Alder', 'Zzz zzz.')])
  const characters = pages[0]?.characters ?? []
  const words = characters.find(({ character }) => character === 'Z')?.ink
  const beside = characters.filter(({ ink }) => Math.abs(ink.bottom - (words?.bottom ?? 0)) < 0.5)
  const sow = beside.find(({ character }) => character === 'S')?.ink
  expect((words?.left ?? 0) - (sow?.left ?? 0)).toBeGreaterThan(25)
  expect(bare(characters.map(({ character }) => character).join(''))).toContain(bare('SowZzz zzz.'))
})

test('nasty names stay within the margins, however long one variety is', async () => {
  const names = fc.sample(nastyName, { numRuns: 12, seed: 20261127 })
  const { pages } = await printed(names.map((name) => variety(name, `${name} `.repeat(30))))
  const astray = pages.flatMap((page) =>
    page.characters.filter(
      ({ character, ink }) =>
        character.trim() !== '' &&
        (ink.left < FLOWING_MARGIN_MM - HAIR_MM ||
          ink.right > page.widthMm - FLOWING_MARGIN_MM + HAIR_MM ||
          ink.bottom > page.heightMm - FOOT_MM + HAIR_MM),
    ),
  )
  expect(astray).toEqual([])
})
