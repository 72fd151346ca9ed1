import type { LetterPart } from '../domain/letters/letter-words.ts'
import { message } from '../messages/message.ts'
import type { Texts } from '../messages/texts.ts'
import { type FlowingLayout, flowingDocument } from './drawing/flowing-document.ts'
import type { PagesWanted, PrintedDocument } from './drawing/paper-document.ts'
import { isSaid, type Paragraph, paragraphsIn } from './drawing/text-flow.ts'

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
  /** What the library keeps to of that, in one line; empty: nothing. */
  readonly keptTo: string
  /** What is done with it where it is not shared; empty: left out. */
  readonly keeping: string
  /** What became of it since, in sentences; empty: left out. */
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
  /** Tells it in the language of whoever reads it. */
  readonly texts: Texts
}

/** Margins in mm: the text of a letter that is filed and read at arm's length (common practice, no source). */
export const LETTER_MARGINS_MM = { side: 25, top: 22, bottom: 24 } as const
const LAYOUT: FlowingLayout = { ...LETTER_MARGINS_MM, foot: 13, footPt: 9, faces: ['regular', 'semibold'] }
const text = paragraphsIn(11)

/** A PDF of letters, each beginning a page. Throws RangeError where there is none. */
export function donorLetters(
  wanted: PagesWanted & { readonly letters: readonly DonorLetter[] },
): Promise<PrintedDocument> {
  const parts = wanted.letters.map((letter) => ({
    name: message('paper.the-letter', { to: letter.to }),
    texts: letter.texts,
    blocks: paragraphsOf(letter),
  }))
  return flowingDocument({ ...wanted, parts }, LAYOUT)
}

function paragraphsOf(letter: DonorLetter): Paragraph[] {
  return [
    text(letter.libraryName, 0, { face: 'semibold', size: 15 }),
    ...[letter.to, ...letter.address].map((line, index) => text(line, index === 0 ? 34 : 0)),
    text(letter.date, 26),
    ...letter.parts.flatMap((part, index) =>
      part.kind === 'gifts'
        ? letter.gifts.flatMap((gift) => giftParagraphs(gift, letter.texts))
        : part.lines.map((line, row) => text(line, row > 0 ? 0 : index === 0 ? 26 : 11)),
    ),
  ]
}

function giftParagraphs(gift: LetterGift, { text: told }: Texts): Paragraph[] {
  const more = (words: string, before: number) => text(words, before, { indent: 14 })
  return [
    text(gift.name, 10, { face: 'semibold', indent: 14, unbrokenWithNext: true }),
    ...[
      more([gift.number, gift.facts].filter((fact) => fact !== '').join(' · '), 0),
      more(gift.donorWords === '' ? '' : told('letters.told-us', { words: gift.donorWords }), 2),
      more(gift.terms === '' ? '' : told('letters.asked', { terms: gift.terms }), 2),
      more(gift.keptTo, 2),
      more(gift.keeping, 2),
      more(gift.sofar, 2),
    ].filter(isSaid),
  ]
}
