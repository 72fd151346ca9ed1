import { message } from '../messages/message.ts'
import type { Texts } from '../messages/texts.ts'
import type { FlowingPart } from './drawing/flowing-document.ts'
import { type Paragraph, paragraphsIn } from './drawing/text-flow.ts'

/** One variety on a grower's sheet. */
export interface GrowerVariety {
  /** 'Runner bean ‘Painted Quill’'. */
  readonly name: string
  /** Accession and lot, in one line. */
  readonly numbers: string
  readonly advice: readonly { readonly heading: string; readonly text: string }[]
  /** Whole sentences. */
  readonly cautions: readonly string[]
}

/** What one garden is asked to grow. */
export interface GrowerSheet {
  readonly to: string
  readonly garden: string
  readonly season: number
  /** Empty where the library names no day. */
  readonly bringBackBy: string
  readonly varieties: readonly GrowerVariety[]
  readonly libraryName: string
  /** Tells it in the language of whoever reads it. */
  readonly texts: Texts
}

/** Room for the headings beside their text: as usual, and for each letter of the longest, so that none is cut. Measured. */
const BESIDE_PT = { least: 88, letter: 6.2 } as const
const NOTES = [
  ['sown-on', 'came-up', 'flowered'],
  ['plants', 'harvested', 'wrong'],
] as const

/** A part for each garden; a variety stands on one page where it fits there. */
export function growerSheetParts(sheets: readonly GrowerSheet[]): FlowingPart[] {
  return sheets.map((sheet) => ({
    name: message('paper.the-grower-sheet', { garden: sheet.garden }),
    texts: sheet.texts,
    blocks: paragraphsOf(sheet),
  }))
}

function paragraphsOf(sheet: GrowerSheet): Paragraph[] {
  const text = paragraphsIn(10.5)
  const { to: grower, garden, bringBackBy: by } = sheet
  const told = sheet.texts.text
  const back = { by, due: by === '' ? 'no' : 'yes' }
  const headings = sheet.varieties.flatMap(({ advice }) => advice.map(({ heading }) => heading.length))
  const indent = Math.max(BESIDE_PT.least, BESIDE_PT.letter * Math.max(0, ...headings))
  return [
    text(sheet.libraryName, 0, { size: 9 }),
    text(told('paper.grower-title', { season: `${sheet.season}` }), 2, { face: 'semibold', size: 18 }),
    text(
      grower === ''
        ? told('paper.grower-garden', { garden, ...back })
        : told('paper.grower-for', { grower, garden, ...back }),
      2,
    ),
    ...sheet.varieties.flatMap((variety) => [
      text(variety.name, 12, { face: 'semibold', size: 13, unbrokenWithNext: true, ruled: true }),
      text(variety.numbers, 0, { size: 9, unbrokenWithNext: true }),
      ...variety.cautions.map((caution) => text(caution, 2, { face: 'bold', unbrokenWithNext: true })),
      ...variety.advice.map(({ heading, text: words }) =>
        text(words, 4, { beside: heading, indent, unbrokenWithNext: true }),
      ),
      ...NOTES.map((words, index) =>
        text(words.map((word) => `${told(`paper.grower-${word}`)}: ____________`).join('   '), 6, {
          size: 9,
          indent,
          unbrokenWithNext: index < NOTES.length - 1,
        }),
      ),
    ]),
    text(told('paper.grower-foot'), 12, { size: 9, ruled: true }),
  ]
}
