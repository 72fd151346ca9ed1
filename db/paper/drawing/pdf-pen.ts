import {
  beginText,
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
import type { Item, TextItem } from './items.ts'
import type { Piece } from './text-fitting.ts'
import type { FaceName, PlacedGlyph, Typeface } from './typeface.ts'

/** Draws laid-out labels on the pages of a PDF. */
export interface Pen {
  /** Begins a page; sizes in points. */
  newPage(width: number, height: number): void
  /** Draws an item of a label whose room begins at x, y: points from the top left corner of the page. */
  draw(item: Item, x: number, y: number): void
}

interface Face {
  readonly font: PDFFont
  readonly typeface: Typeface
  /** Glyph codes of words seen before, four hexadecimal digits each. */
  readonly codes: Map<string, readonly string[]>
}

interface Glyph extends PlacedGlyph {
  readonly code: string
}

/** Opens a pen for some faces; only the letters that it draws are put into the document. */
export async function openPen(document: PDFDocument, faces: ReadonlyMap<FaceName, Typeface>): Promise<Pen> {
  const embedded = new Map<FaceName, Face>()
  for (const [name, typeface] of faces) {
    const customName = `${subsetTag(embedded.size)}+${typeface.name}`
    const font = await document.embedFont(typeface.bytes, {
      subset: true,
      features: typeface.features,
      customName,
    })
    embedded.set(name, { font, typeface, codes: new Map() })
  }
  let page: PDFPage | undefined
  let keys = new Map<FaceName, PDFName>()
  return {
    newPage(width, height) {
      page = document.addPage([width, height])
      keys = new Map(
        Array.from(embedded, ([name, { font }]) => [name, addFont(page as PDFPage, font)] as const),
      )
    },
    draw(item, x, y) {
      if (!page) throw new RangeError('Begin a page before drawing.')
      const top = page.getHeight() - y
      const face = item.kind === 'text' ? embedded.get(item.face) : undefined
      const key = item.kind === 'text' ? keys.get(item.face) : undefined
      if (item.kind === 'text' && face && key) page.pushOperators(...textOperators(item, face, key, x, top))
      if (item.kind === 'bar')
        page.pushOperators(box(x + item.x, top - item.y, item.width, item.height), fill())
      if (item.kind === 'code') page.pushOperators(...codeOperators(item, x, top))
    },
  }
}

function addFont(page: PDFPage, font: PDFFont): PDFName {
  return page.node.newFontDictionary(font.name, font.ref)
}

/** Six capitals that mark a font as a part of the whole one (ISO 32000-1, 9.6.4). */
function subsetTag(index: number): string {
  return `LABEL${String.fromCharCode('A'.charCodeAt(0) + index)}`
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

function textOperators(item: TextItem, face: Face, key: PDFName, x: number, top: number): PDFOperator[] {
  const operators = [
    beginText(),
    setFontAndSize(key, rounded(item.size)),
    setTextMatrix(1, 0, 0, 1, rounded(x + item.x), rounded(top - item.baseline)),
  ]
  let rise = 0
  let waiting: Glyph[] = []
  const show = () => {
    if (waiting.length > 0) operators.push(showGlyphs(face, waiting))
    waiting = []
  }
  for (const glyph of item.line.flatMap((piece, index) => glyphsOf(piece, index, face))) {
    if (glyph.rise !== rise) {
      show()
      rise = glyph.rise
      operators.push(setTextRise(rounded(rise * item.size)))
    }
    waiting.push(glyph)
  }
  show()
  if (rise !== 0) operators.push(setTextRise(0))
  return [...operators, endText()]
}

function glyphsOf(piece: Piece, index: number, face: Face): Glyph[] {
  const space = piece.spaced && index > 0 ? placed(' ', face) : []
  return [...space, ...placed(piece.text, face)]
}

/** The glyphs of a word. A no-break space has done its work by now and is drawn as a space, to be found as one. */
function placed(word: string, face: Face): Glyph[] {
  const text = word.replaceAll('\u00a0', ' ')
  let codes = face.codes.get(text)
  if (!codes) {
    codes = face.font.encodeText(text).asString().match(/.{4}/g) ?? []
    face.codes.set(text, codes)
  }
  return face.typeface.shape(text).glyphs.map((glyph, index) => ({ ...glyph, code: codes?.[index] ?? '' }))
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
