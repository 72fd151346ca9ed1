import {
  beginText,
  endMarkedContent,
  endText,
  fill,
  type PDFDocument,
  type PDFFont,
  PDFHexString,
  type PDFName,
  PDFNumber,
  PDFOperator,
  PDFOperatorNames,
  type PDFPage,
  rectangle,
  setFontAndSize,
  setTextMatrix,
  setTextRise,
} from 'pdf-lib'
import type { FontFile, PlacedGlyph, Run } from './font-file.ts'
import type { Item, TextItem } from './items.ts'
import { runsOfLine } from './text-fitting.ts'
import type { FaceName, Typeface } from './typeface.ts'

/** Draws laid-out items on the pages of a PDF. */
export interface Pen {
  /** Begins a page; sizes in points. */
  newPage(width: number, height: number): void
  /** Draws an item of a label whose room begins at x, y: points from the top left corner of the page. */
  draw(item: Item, x: number, y: number): void
}

interface Face {
  readonly font: PDFFont
  /** Glyph codes of texts seen before, four hexadecimal digits each. */
  readonly codes: Map<string, readonly string[]>
}

interface Glyph extends PlacedGlyph {
  readonly code: string
}

/** What is drawn at a height from the foot of its page, points. */
interface Drawn {
  readonly item: Item
  readonly runs: readonly Run[]
  readonly x: number
  readonly top: number
}

interface DrawnPage {
  readonly width: number
  readonly height: number
  readonly drawn: Drawn[]
}

/**
 * Opens a pen for some faces. `finish` puts what was drawn into the document, with the letters that it needs of the fonts
 * that it needs.
 */
export function openPen(
  document: PDFDocument,
  faces: ReadonlyMap<FaceName, Typeface>,
): Pen & { finish(): Promise<void> } {
  const pages: DrawnPage[] = []
  return {
    newPage(width, height) {
      pages.push({ width, height, drawn: [] })
    },
    draw(item, x, y) {
      const page = pages.at(-1)
      if (!page) throw new RangeError('Begin a page before drawing.')
      const typeface = item.kind === 'text' ? faces.get(item.face) : undefined
      const runs = item.kind === 'text' && typeface ? runsOfLine(typeface, item.line) : []
      page.drawn.push({ item, runs, x, top: page.height - y })
    },
    async finish() {
      const embedded = await embedFonts(document, pages)
      for (const page of pages) writePage(document.addPage([page.width, page.height]), page, embedded)
    },
  }
}

/** Puts the fonts that something is drawn with into the document, each once. */
async function embedFonts(
  document: PDFDocument,
  pages: readonly DrawnPage[],
): Promise<ReadonlyMap<FontFile, Face>> {
  const embedded = new Map<FontFile, Face>()
  const used = new Set(
    pages.flatMap(({ drawn }) => drawn.flatMap(({ runs }) => runs.map(({ font }) => font))),
  )
  for (const file of used) {
    const customName = `${subsetTag(embedded.size)}+${file.name}`
    const { bytes, features } = file
    const font = await document.embedFont(bytes, { subset: true, features, customName })
    embedded.set(file, { font, codes: new Map() })
  }
  return embedded
}

function writePage(page: PDFPage, { drawn }: DrawnPage, embedded: ReadonlyMap<FontFile, Face>): void {
  const keys = new Map<FontFile, PDFName>()
  for (const file of new Set(drawn.flatMap(({ runs }) => runs.map(({ font }) => font)))) {
    const font = embedded.get(file)?.font
    if (font) keys.set(file, page.node.newFontDictionary(font.name, font.ref))
  }
  const fontOf = (run: Run) => {
    const [face, key] = [embedded.get(run.font), keys.get(run.font)]
    return face && key ? { face, key } : undefined
  }
  for (const { item, runs, x, top } of drawn) {
    if (item.kind === 'text') page.pushOperators(...textOperators(item, runs, fontOf, x, top))
    if (item.kind === 'bar')
      page.pushOperators(box(x + item.x, top - item.y, item.width, item.height), fill())
    if (item.kind === 'code') page.pushOperators(...codeOperators(item, x, top))
  }
}

/** Six capitals that mark a font as a part of the whole one (ISO 32000-1, 9.6.4). */
function subsetTag(index: number): string {
  const letter = (place: number) => String.fromCharCode('A'.charCodeAt(0) + place)
  return `LABE${letter(11 + Math.floor(index / 26))}${letter(index % 26)}`
}

/** One path for the whole code, so that no hairline shows between its rectangles. */
function codeOperators(item: Extract<Item, { kind: 'code' }>, x: number, top: number): PDFOperator[] {
  const { module } = item
  return [
    ...item.code.squares.map((square) =>
      box(
        x + item.x + square.x * module,
        top - item.y - square.y * module,
        square.width * module,
        square.height * module,
      ),
    ),
    fill(),
  ]
}

/** A rectangle by its top left corner. */
function box(left: number, top: number, width: number, height: number): PDFOperator {
  return rectangle(rounded(left), rounded(top - height), rounded(width), rounded(height))
}

type FontOf = (run: Run) => { readonly face: Face; readonly key: PDFName } | undefined

function textOperators(
  item: TextItem,
  runs: readonly Run[],
  fontOf: FontOf,
  x: number,
  top: number,
): PDFOperator[] {
  const operators: PDFOperator[] = []
  let current: ReturnType<FontOf>
  let rise = 0
  let waiting: Glyph[] = []
  const show = () => {
    if (current && waiting.length > 0) operators.push(showGlyphs(current.face, waiting))
    waiting = []
  }
  for (const run of runs) {
    const font = fontOf(run)
    if (!font) continue
    if (font.face !== current?.face) {
      show()
      operators.push(setFontAndSize(font.key, rounded(item.size)))
      if (!current)
        operators.push(setTextMatrix(1, 0, 0, 1, rounded(x + item.x), rounded(top - item.baseline)))
      current = font
    }
    for (const [index, glyph] of placed(run, font.face).entries()) {
      const span = run.spans.find(({ from }) => from === index)
      if (span || glyph.rise !== rise) show()
      if (span) operators.push(beginReadAs(span.text))
      if (glyph.rise !== rise) {
        rise = glyph.rise
        operators.push(setTextRise(rounded(rise * item.size)))
      }
      waiting.push(glyph)
      if (run.spans.some(({ to }) => to === index + 1)) {
        show()
        operators.push(endMarkedContent())
      }
    }
  }
  show()
  if (rise !== 0) operators.push(setTextRise(0))
  return [beginText(), ...operators, endText()]
}

/** Begins a span that is searched, copied and read aloud as a text, whatever its glyphs say (ISO 32000-1, 14.9.4). */
function beginReadAs(text: string): PDFOperator {
  return PDFOperator.of(PDFOperatorNames.BeginMarkedContentSequence, [
    '/Span',
    `<</ActualText ${PDFHexString.fromText(text)}>>`,
  ])
}

function placed(run: Run, face: Face): Glyph[] {
  let codes = face.codes.get(run.text)
  if (!codes) {
    codes = face.font.encodeText(run.text).asString().match(/.{4}/g) ?? []
    face.codes.set(run.text, codes)
  }
  return run.glyphs.map((glyph, index) => ({ ...glyph, code: codes?.[index] ?? '' }))
}

/** One TJ operator: glyph codes, and between them how far the pen goes back, in thousandths of an em. */
function showGlyphs(face: Face, glyphs: readonly Glyph[]): PDFOperator {
  const parts = face.font.doc.context.obj([])
  let run = ''
  let back = 0
  for (const glyph of glyphs) {
    back -= glyph.before * 1000
    if (Math.abs(back) >= 0.5) {
      if (run) parts.push(PDFHexString.of(run))
      parts.push(PDFNumber.of(Math.round(back)))
      run = ''
    }
    run += glyph.code
    back = -glyph.after * 1000
  }
  parts.push(PDFHexString.of(run))
  parts.push(PDFNumber.of(Math.round(back)))
  return PDFOperator.of(PDFOperatorNames.ShowTextAdjusted, [parts])
}

/** Thousandths of a point are finer than any printer. */
function rounded(points: number): number {
  return Math.round(points * 1000) / 1000
}
