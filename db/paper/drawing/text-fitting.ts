import { lettersOf } from './printable-text.ts'
import type { Typeface } from './typeface.ts'

/** A piece of text that a line break leaves whole: a word, or part of one up to its hyphen. */
export interface Piece {
  readonly text: string
  /** Whether a space stands before it. */
  readonly spaced: boolean
  /** Whether it begins a line wherever it stands. */
  readonly opens: boolean
}

export type Line = readonly Piece[]

export interface Lines {
  readonly lines: readonly Line[]
  /** Whether the end was cut off and an ellipsis set in its place. */
  readonly cut: boolean
}

export interface Fit {
  /** The width of the n-th line, in em. */
  readonly widthOf: (line: number) => number
  readonly maxLines: number
  /** Whether a word that is longer than a line may be broken anywhere. */
  readonly mayBreak: boolean
  /** Whether what does not fit may give way to '…'. */
  readonly mayCut: boolean
}

const ELLIPSIS = '…'

/** The pieces of a text: broken at spaces, after hyphens, dashes and slashes, and always at a line feed. */
export function piecesOf(text: string): Piece[] {
  return text.split('\n').flatMap((row, rowIndex) =>
    row
      .split(' ')
      .filter((word) => word !== '')
      .flatMap((word, index) =>
        (word.match(/[^-–—/]*[-–—/]+(?=.)|.+$/gu) ?? [word]).map((part, place) => ({
          text: part,
          spaced: place === 0 && index > 0,
          opens: place === 0 && index === 0 && rowIndex > 0,
        })),
      ),
  )
}

/** Text that stays on one line whatever it holds. */
export function wholePiece(text: string): Line {
  return [{ text, spaced: false, opens: false }]
}

/** A line as it reads. */
export function lineText(line: Line): string {
  return line.map((piece, index) => (piece.spaced && index > 0 ? ' ' : '') + piece.text).join('')
}

/** The width of a line's ink in em. */
export function lineWidth(typeface: Typeface, line: Line): number {
  const space = typeface.shape(' ').width
  const last = line.at(-1)
  return line.reduce(
    (sum, piece, index) => sum + (piece.spaced && index > 0 ? space : 0) + typeface.shape(piece.text).width,
    leftOverhang(typeface, line) + (last ? typeface.shape(last.text).right : 0),
  )
}

/** How far a line's ink reaches to the left of where it begins, in em: a j or an î does. */
export function leftOverhang(typeface: Typeface, line: Line): number {
  const first = line[0]
  return first ? typeface.shape(first.text).left : 0
}

/** Breaks pieces into lines; null where they do not fit. */
export function fitLines(typeface: Typeface, pieces: readonly Piece[], fit: Fit): Lines | null {
  const lines: Piece[][] = [[]]
  const waiting = [...pieces]
  for (let piece = waiting.shift(); piece; piece = waiting.shift()) {
    const row = lines.length - 1
    const line = lines[row] ?? []
    const begins = line.length === 0
    if ((begins || !piece.opens) && lineWidth(typeface, [...line, piece]) <= fit.widthOf(row)) {
      line.push(piece)
    } else if (lines.length === fit.maxLines) {
      return fit.mayCut
        ? { lines: [...lines.slice(0, -1), cutLine(typeface, [...line, piece], fit, row)], cut: true }
        : null
    } else if (!begins) {
      waiting.unshift(piece)
      lines.push([])
    } else if (fit.mayBreak) {
      const [head, tail] = breakPiece(typeface, piece, fit.widthOf(row))
      line.push(head)
      waiting.unshift(tail)
      lines.push([])
    } else return null
  }
  return { lines, cut: false }
}

const BALANCING_STEPS = 6

/** The same number of lines, more alike in length; as they are where they are one line, or cut. */
export function balanceLines(typeface: Typeface, pieces: readonly Piece[], fit: Fit, fitted: Lines): Lines {
  const rows = fitted.lines.length
  if (rows < 2 || fitted.cut) return fitted
  let best = fitted
  let narrow = 0.5
  let wide = 1
  for (let step = 0; step < BALANCING_STEPS; step++) {
    const part = (narrow + wide) / 2
    const widthOf = (line: number) => fit.widthOf(line) * part
    const tried = fitLines(typeface, pieces, {
      ...fit,
      widthOf,
      maxLines: rows,
      mayBreak: false,
      mayCut: false,
    })
    if (tried) {
      best = tried
      wide = part
    } else narrow = part
  }
  return best
}

/** As much of a line as fits with an ellipsis after it. */
function cutLine(typeface: Typeface, line: Line, fit: Fit, row: number): Line {
  const letters = lettersOf(lineText(line))
  const shortened = (count: number) => piecesOf(letters.slice(0, count).join('').trimEnd() + ELLIPSIS)
  const count = mostThatFit(
    letters.length,
    (some) => lineWidth(typeface, shortened(some)) <= fit.widthOf(row),
  )
  return shortened(count)
}

/** Breaks a word that is longer than a line, at least one letter off. */
function breakPiece(typeface: Typeface, piece: Piece, width: number): [Piece, Piece] {
  const letters = lettersOf(piece.text)
  const head = (count: number) => letters.slice(0, count).join('')
  const count = Math.max(
    1,
    mostThatFit(letters.length - 1, (some) => lineWidth(typeface, wholePiece(head(some))) <= width),
  )
  return [
    { ...piece, text: head(count) },
    { text: letters.slice(count).join(''), spaced: false, opens: false },
  ]
}

/** The largest count up to `most` that fits, by halving: more never fits where fewer do not. */
function mostThatFit(most: number, fits: (count: number) => boolean): number {
  let low = 0
  let high = most
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (fits(middle)) low = middle
    else high = middle - 1
  }
  return low
}
