import type { LetterPart } from '../domain/letters/letter-words.ts'
import type { PaperFonts } from './drawing/fonts.ts'
import { PAGE_SIZES, type PaperName, POINTS_PER_MM } from './drawing/page-sizes.ts'
import { openFaces, type PrintedDocument, startDocument } from './drawing/paper-document.ts'
import { openPen } from './drawing/pdf-pen.ts'
import { lackedLetters } from './drawing/printable-text.ts'
import { drawLines, type Paragraph, pagesOf, setParagraphs } from './drawing/text-flow.ts'

/** A gift as the letter lists it. */
export interface LetterGift {
  readonly number: string
  /** 'Runner bean ‘Painted Quill’'. */
  readonly name: string
  /** Year, amount and where grown, in one line; empty: left out. */
  readonly facts: string
  /** What the donor told, and what they asked for; empty: left out. */
  readonly donorWords: string
  readonly terms: string
  /** What is done with it where it is not shared; empty: left out. */
  readonly keeping: string
  /** What became of it since, in one sentence; empty: left out. */
  readonly sofar: string
}

export interface DonorLetter {
  readonly to: string
  /** The address, a line each; empty where none is known. */
  readonly address: readonly string[]
  readonly date: string
  readonly libraryName: string
  readonly parts: readonly LetterPart[]
  readonly gifts: readonly LetterGift[]
}

export interface LettersWanted {
  readonly letters: readonly DonorLetter[]
  readonly paper: PaperName
  readonly title: string
  readonly language: string
  readonly fonts: PaperFonts
}

/** Margins in mm: the text of a letter that is filed and read at arm's length (common practice, no source). */
export const LETTER_MARGINS_MM = { side: 25, top: 22, bottom: 24 } as const
const TEXT_PT = 11
const SMALL_PT = 9
/** Where the number of a page stands, mm from its bottom. */
const FOOT_MM = 13

/** A PDF of letters, each beginning a page. Throws RangeError where there is none. */
export async function donorLetters(wanted: LettersWanted): Promise<PrintedDocument> {
  if (wanted.letters.length === 0) throw new RangeError('Choose at least one letter to print.')
  const page = PAGE_SIZES[wanted.paper]
  const faces = openFaces(wanted.fonts)
  const { side, top, bottom } = LETTER_MARGINS_MM
  const width = page.width - 2 * side * POINTS_PER_MM
  const height = page.height - (top + bottom) * POINTS_PER_MM
  const document = await startDocument(wanted)
  const { regular, semibold } = faces
  const pen = await openPen(
    document,
    new Map([
      ['regular', regular],
      ['semibold', semibold],
    ]),
  )
  const warnings: string[] = []
  for (const letter of wanted.letters) {
    const missing = new Set<string>()
    const pages = pagesOf(setParagraphs(paragraphsOf(letter), width, faces, missing), height)
    pages.forEach((lines, index) => {
      pen.newPage(page.width, page.height)
      drawLines(pen, lines, side * POINTS_PER_MM, top * POINTS_PER_MM)
      if (pages.length === 1) return
      const foot = {
        text: `Page ${index + 1} of ${pages.length}`,
        face: 'regular',
        size: SMALL_PT,
        before: 0,
      } as const
      const set = setParagraphs([foot], width, faces, missing)
      drawLines(pen, set, side * POINTS_PER_MM, page.height - FOOT_MM * POINTS_PER_MM)
    })
    warnings.push(...lackedLetters(`The letter to ${letter.to}`, missing))
  }
  return { bytes: await document.save(), pages: document.getPageCount(), warnings }
}

function paragraphsOf(letter: DonorLetter): Paragraph[] {
  const head: Paragraph[] = [
    { text: letter.libraryName, face: 'semibold', size: 15, before: 0 },
    ...[letter.to, ...letter.address].map(
      (text, index): Paragraph => ({ text, face: 'regular', size: TEXT_PT, before: index === 0 ? 34 : 0 }),
    ),
    { text: letter.date, face: 'regular', size: TEXT_PT, before: 26 },
  ]
  const body = letter.parts.flatMap((part, index): Paragraph[] =>
    part.kind === 'gifts'
      ? letter.gifts.flatMap(giftParagraphs)
      : part.lines.map((text, row) => ({
          text,
          face: 'regular',
          size: TEXT_PT,
          before: row > 0 ? 0 : index === 0 ? 26 : 11,
        })),
  )
  return [...head, ...body]
}

function giftParagraphs(gift: LetterGift): Paragraph[] {
  const more = (text: string, before: number): Paragraph[] =>
    text === '' ? [] : [{ text, face: 'regular', size: TEXT_PT, before, indent: 14 }]
  const facts = [gift.number, gift.facts].filter((fact) => fact !== '').join(' · ')
  return [
    { text: gift.name, face: 'semibold', size: TEXT_PT, before: 10, indent: 14, unbrokenWithNext: true },
    ...more(facts, 0),
    ...more(gift.donorWords === '' ? '' : `You told us: ${gift.donorWords}`, 2),
    ...more(gift.terms === '' ? '' : `You asked: ${gift.terms}`, 2),
    ...more(gift.keeping, 2),
    ...more(gift.sofar, 2),
  ]
}
