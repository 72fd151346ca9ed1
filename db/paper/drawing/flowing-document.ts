import type { Message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { type Item, moved } from './items.ts'
import { PAGE_SIZES, POINTS_PER_MM } from './page-sizes.ts'
import { drawDocument, type PagesWanted, type PrintedDocument } from './paper-document.ts'
import { lackedLetters } from './printable-text.ts'
import {
  drawLines,
  type Faces,
  type Paragraph,
  pagesOf,
  paragraphsIn,
  type SetLine,
  setParagraphs,
} from './text-flow.ts'
import type { FaceName } from './typeface.ts'

/** Figures side by side as bars, the longest of them as long as there is room. */
export interface Bars {
  readonly bars: readonly {
    readonly label: string
    readonly value: number
    /** The value in words, beside its bar. */
    readonly words: string
  }[]
}

/** Paragraphs and pictures that begin a page of their own. */
export interface FlowingPart {
  /** What a warning calls it. */
  readonly name: Message
  /** Tells what is printed in the language of whoever reads this part. */
  readonly texts: Texts
  readonly blocks: readonly (Paragraph | Bars)[]
}

export interface FlowingWanted extends PagesWanted {
  readonly parts: readonly FlowingPart[]
}

/** How pages of flowing text are laid out: margins and where the page's number stands from the bottom, mm. */
export interface FlowingLayout {
  readonly side: number
  readonly top: number
  readonly bottom: number
  readonly foot: number
  /** The type of the page's number, points. */
  readonly footPt: number
  readonly faces: readonly FaceName[]
}

export const FLOWING_MARGIN_MM = 18
const USUAL_LAYOUT: FlowingLayout = {
  side: FLOWING_MARGIN_MM,
  top: FLOWING_MARGIN_MM,
  bottom: FLOWING_MARGIN_MM,
  foot: 11,
  footPt: 8.5,
  faces: ['regular', 'italic', 'semibold', 'bold'],
}
const BAR_ROW_PT = 15
const BAR_PT = 8
const BAR_TEXT_PT = 9
/** Parts of the width that the labels and the longest bar take. */
const LABEL_PART = 0.34
const BAR_PART = 0.42

/** A PDF of flowing text, its pages numbered within each part. Throws RangeError where there is nothing to print. */
export async function flowingDocument(
  wanted: FlowingWanted,
  { side, top, bottom, foot, footPt, faces: used }: FlowingLayout = USUAL_LAYOUT,
): Promise<PrintedDocument> {
  if (wanted.parts.length === 0) throw new RangeError('There is nothing to print.')
  const page = PAGE_SIZES[wanted.paper]
  const left = side * POINTS_PER_MM
  const width = page.width - 2 * left
  const height = page.height - (top + bottom) * POINTS_PER_MM
  return drawDocument(wanted, used, (pen, faces) =>
    wanted.parts.flatMap((part) => {
      const missing = new Set<string>()
      const lines = part.blocks.flatMap((block) =>
        'bars' in block
          ? barLines(block, width, faces, missing)
          : setParagraphs([block], width, faces, missing),
      )
      const pages = pagesOf(lines, height)
      pages.forEach((onPage, index) => {
        pen.newPage(page.width, page.height)
        drawLines(pen, onPage, left, top * POINTS_PER_MM)
        if (pages.length === 1) return
        const number = part.texts.text('paper.page', { page: index + 1, pages: pages.length })
        const set = setParagraphs([paragraphsIn(footPt)(number, 0)], width, faces, missing)
        drawLines(pen, set, left, page.height - foot * POINTS_PER_MM)
      })
      return lackedLetters(part.name, missing)
    }),
  )
}

/** Each figure with its label, its bar and its words; a label that is too long is broken over lines. */
function barLines({ bars }: Bars, width: number, faces: Faces, missing: Set<string>): SetLine[] {
  const most = Math.max(1, ...bars.map(({ value }) => value))
  return bars.flatMap(({ label, value, words }, index) => {
    const text = (words_: string, room: number) =>
      setParagraphs([paragraphsIn(BAR_TEXT_PT)(words_, 0)], room, faces, missing)
    const named = text(label, LABEL_PART * width - 6)
    const [said] = text(words, (1 - LABEL_PART - BAR_PART) * width)
    const long = (value / most) * BAR_PART * width
    const bar: Item = {
      kind: 'bar',
      x: LABEL_PART * width,
      y: (BAR_ROW_PT - BAR_PT) / 2,
      width: long,
      height: BAR_PT,
    }
    const beside = (said?.items ?? []).map((item) => moved(item, LABEL_PART * width + long + 5, 0))
    const first = named[0]
    const row: SetLine = {
      items: [...(first?.items ?? []), ...(value > 0 ? [bar] : []), ...beside],
      before: index === 0 ? 4 : 0,
      height: BAR_ROW_PT,
      kept: index < bars.length - 1 && named.length === 1,
    }
    return [row, ...named.slice(1)]
  })
}
