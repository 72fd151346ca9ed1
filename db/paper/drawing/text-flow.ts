import type { Item } from './items.ts'
import type { Pen } from './pdf-pen.ts'
import { printableText } from './printable-text.ts'
import { fitLines, type Line, lineStart, lineText, piecesOf, runsFromRight } from './text-fitting.ts'
import type { FaceName, Typeface } from './typeface.ts'

/** A paragraph to be set. Sizes in points. */
export interface Paragraph {
  readonly text: string
  readonly face: FaceName
  readonly size: number
  /** White above it, unless it begins a page. */
  readonly before: number
  readonly indent?: number
  /** Stands in the indent beside the first line, semibold. */
  readonly beside?: string
  /** Whether all of it stays on the page on which the next paragraph begins, as a heading does. */
  readonly unbrokenWithNext?: boolean
  /** A ruled line above it. */
  readonly ruled?: boolean
}

/** Makes paragraphs of a size, in the regular face where nothing else is said. */
export function paragraphsIn(
  size: number,
): (text: string, before: number, more?: Partial<Paragraph>) => Paragraph {
  return (text, before, more) => ({ text, face: 'regular', size, before, ...more })
}

/** Whether there is anything in a paragraph to be set. */
export function isSaid({ text }: Paragraph): boolean {
  return text !== ''
}

/** A line set: what is drawn, from the line's top left corner, and how much room it takes. */
export interface SetLine {
  readonly items: readonly Item[]
  readonly before: number
  readonly height: number
  /** Whether a page may not end after it. */
  readonly kept: boolean
}

export type Faces = Readonly<Record<FaceName, Typeface>>

/** From one baseline to the next, and from the top of a line to its baseline, in em. */
const LEADING = 1.34
const ASCENT = 0.98
const RULE_PT = 0.5
const RULE_ROOM = 7

/**
 * Sets paragraphs in lines of a width. A word longer than a line is broken; nothing is ever cut off.
 *
 * Letters that the typeface lacks are collected in `missing` and printed as boxes.
 */
export function setParagraphs(
  paragraphs: readonly Paragraph[],
  width: number,
  faces: Faces,
  missing: Set<string>,
): SetLine[] {
  return paragraphs.flatMap((paragraph) => {
    const { size, indent = 0, face } = paragraph
    const linesOf = (text: string, of: FaceName, room: number): readonly Line[] => {
      const printable = printableText(text, faces[of])
      for (const letter of printable.missing) missing.add(letter)
      const fitted = fitLines(faces[of], piecesOf(printable.text), {
        widthOf: () => room / size,
        maxLines: Number.MAX_SAFE_INTEGER,
        mayBreak: true,
        mayCut: false,
      })
      return fitted?.lines ?? []
    }
    const beside =
      paragraph.beside === undefined ? [] : linesOf(paragraph.beside, 'semibold', indent).slice(0, 1)
    const lines = linesOf(paragraph.text, face, width - indent)
    return lines.map((line, index): SetLine => {
      const first = index === 0
      const rule = first && paragraph.ruled ? RULE_ROOM : 0
      const fromRight = runsFromRight(line)
      const textAt = (inset: number, of: FaceName, text: Line): Item => ({
        kind: 'text',
        face: of,
        size,
        x: (fromRight ? 0 : inset) + lineStart(faces[of], text, (width - inset) / size, fromRight) * size,
        baseline: rule + ASCENT * size,
        line: text,
      })
      const bar: Item[] = rule === 0 ? [] : [{ kind: 'bar', x: 0, y: 0, width, height: RULE_PT }]
      return {
        items: [
          ...bar,
          ...(first ? beside.map((words) => textAt(0, 'semibold', words)) : []),
          textAt(indent, face, line),
        ],
        before: first ? paragraph.before : 0,
        height: rule + LEADING * size,
        kept: keptTogether(paragraph, index, lines.length),
      }
    })
  })
}

/** No first or last line of a longer paragraph stands alone on a page; what is kept with the next stays whole. */
function keptTogether(paragraph: Paragraph, index: number, count: number): boolean {
  if (paragraph.unbrokenWithNext === true) return true
  return index < count - 1 && (index === 0 || index === count - 2)
}

/** How much room lines take from the top of a page. */
export function heightOf(lines: readonly SetLine[]): number {
  return lines.reduce((sum, line, index) => sum + (index === 0 ? 0 : line.before) + line.height, 0)
}

/** Lines parted into pages of a height. Throws nothing: a group that no page could hold is parted all the same. */
export function pagesOf(lines: readonly SetLine[], height: number): SetLine[][] {
  const pages: SetLine[][] = []
  let page: SetLine[] = []
  for (const group of groupsOf(lines)) {
    if (page.length > 0 && heightOf([...page, ...group]) > height) {
      pages.push(page)
      page = []
    }
    for (const line of group) {
      if (page.length > 0 && heightOf([...page, line]) > height) {
        pages.push(page)
        page = []
      }
      page.push(line)
    }
  }
  if (page.length > 0) pages.push(page)
  return pages
}

/** The lines that fit a height, the last of them ending in an ellipsis where more would follow. */
export function cutToHeight(
  lines: readonly SetLine[],
  room: { readonly width: number; readonly height: number },
  faces: Faces,
): SetLine[] {
  const fitting = pagesOf(
    lines.map((line) => ({ ...line, kept: false })),
    room.height,
  )[0]
  const last = fitting?.at(-1)
  if (fitting === undefined || last === undefined || fitting.length === lines.length) return [...lines]
  return [
    ...fitting.slice(0, -1),
    { ...last, items: last.items.map((item) => withEllipsis(item, room.width, faces)) },
  ]
}

function withEllipsis(item: Item, width: number, faces: Faces): Item {
  if (item.kind !== 'text') return item
  const fromRight = runsFromRight(item.line)
  const room = (fromRight ? width : width - item.x) / item.size
  const text = `${lineText(item.line)} …`
  const fitted = fitLines(faces[item.face], piecesOf(text, item.line[0]?.runs?.base), {
    widthOf: () => room,
    maxLines: 1,
    mayBreak: true,
    mayCut: true,
  })
  const line = fitted?.lines[0] ?? item.line
  return fromRight
    ? { ...item, line, x: lineStart(faces[item.face], line, room, true) * item.size }
    : { ...item, line }
}

function groupsOf(lines: readonly SetLine[]): SetLine[][] {
  const groups: SetLine[][] = []
  let open = false
  for (const line of lines) {
    const group = groups.at(-1)
    if (open && group) group.push(line)
    else groups.push([line])
    open = line.kept
  }
  return groups
}

/** Where each line of a page stands: its distance from the top. */
export function placed(lines: readonly SetLine[]): { readonly line: SetLine; readonly y: number }[] {
  let y = 0
  return lines.map((line, index) => {
    const top = y + (index === 0 ? 0 : line.before)
    y = top + line.height
    return { line, y: top }
  })
}

/** Draws lines one below another from a corner, points from the top left of the page. */
export function drawLines(pen: Pen, lines: readonly SetLine[], x: number, y: number): void {
  for (const { line, y: down } of placed(lines)) for (const item of line.items) pen.draw(item, x, y + down)
}
