import type { PaperFonts } from './fonts.ts'
import type { Item } from './items.ts'
import { PAGE_SIZES, type PaperName, POINTS_PER_MM } from './page-sizes.ts'
import { openFaces, type PrintedDocument, startDocument } from './paper-document.ts'
import { openPen } from './pdf-pen.ts'
import { lackedLetters } from './printable-text.ts'
import { drawLines, type Faces, type Paragraph, pagesOf, type SetLine, setParagraphs } from './text-flow.ts'
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
  readonly name: string
  readonly blocks: readonly (Paragraph | Bars)[]
}

export interface FlowingWanted {
  readonly parts: readonly FlowingPart[]
  readonly paper: PaperName
  readonly title: string
  readonly language: string
  readonly fonts: PaperFonts
}

export const FLOWING_MARGIN_MM = 18
const FOOT_MM = 11
const FOOT_PT = 8.5
const BAR_ROW_PT = 15
const BAR_PT = 8
const BAR_TEXT_PT = 9
/** Parts of the width that the labels and the longest bar take. */
const LABEL_PART = 0.34
const BAR_PART = 0.42

/** A PDF of flowing text, its pages numbered within each part. Throws RangeError where there is nothing to print. */
export async function flowingDocument(wanted: FlowingWanted): Promise<PrintedDocument> {
  if (wanted.parts.length === 0) throw new RangeError('There is nothing to print.')
  const page = PAGE_SIZES[wanted.paper]
  const faces = openFaces(wanted.fonts)
  const margin = FLOWING_MARGIN_MM * POINTS_PER_MM
  const width = page.width - 2 * margin
  const document = await startDocument(wanted)
  const used: FaceName[] = ['regular', 'italic', 'semibold', 'bold']
  const pen = await openPen(document, new Map(used.map((name) => [name, faces[name]])))
  const warnings: string[] = []
  for (const part of wanted.parts) {
    const missing = new Set<string>()
    const lines = part.blocks.flatMap((block) =>
      'bars' in block
        ? barLines(block, width, faces, missing)
        : setParagraphs([block], width, faces, missing),
    )
    const pages = pagesOf(lines, page.height - 2 * margin)
    pages.forEach((onPage, index) => {
      pen.newPage(page.width, page.height)
      drawLines(pen, onPage, margin, margin)
      if (pages.length === 1) return
      const text = `Page ${index + 1} of ${pages.length}`
      const foot = setParagraphs([{ text, face: 'regular', size: FOOT_PT, before: 0 }], width, faces, missing)
      drawLines(pen, foot, margin, page.height - FOOT_MM * POINTS_PER_MM)
    })
    warnings.push(...lackedLetters(part.name, missing))
  }
  return { bytes: await document.save(), pages: document.getPageCount(), warnings }
}

/** Each figure with its label, its bar and its words; a label that is too long is broken over lines. */
function barLines({ bars }: Bars, width: number, faces: Faces, missing: Set<string>): SetLine[] {
  const most = Math.max(1, ...bars.map(({ value }) => value))
  return bars.flatMap(({ label, value, words }, index) => {
    const text = (words_: string, room: number) =>
      setParagraphs([{ text: words_, face: 'regular', size: BAR_TEXT_PT, before: 0 }], room, faces, missing)
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
    const beside = (said?.items ?? []).map((item) => right(item, LABEL_PART * width + long + 5))
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

function right(item: Item, by: number): Item {
  return { ...item, x: item.x + by }
}
