import type { Run } from './font-file.ts'
import { lettersOf } from './letters.ts'
import { inVisualOrder, type Levels, levelsOf, readsFromRight } from './text-direction.ts'
import { joinedShape, type Shape, type Typeface } from './typeface.ts'

/** A piece of text that a line break leaves whole: a word, or part of one up to its hyphen. */
export interface Piece {
  readonly text: string
  /** Whether a space stands before it. */
  readonly spaced: boolean
  /** Whether it begins a line wherever it stands. */
  readonly opens: boolean
  /** How it runs, and the level of the space before it; left out where its whole paragraph runs from left to right. */
  readonly runs?: Levels & { readonly space: number }
  /** Whether its ideographs are drawn as in Japan. */
  readonly japanese?: boolean
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

/**
 * The pieces of a text: broken at spaces, after hyphens, dashes and slashes, between ideographs, and always at a line
 * feed. `base` is the level of the paragraph that the text is part of; left out, the text decides.
 */
export function piecesOf(text: string, base?: number): Piece[] {
  const japanese = KANA.test(text) ? { japanese: true } : {}
  return text.split('\n').flatMap((row, rowIndex) => {
    const levels = base !== undefined || readsFromRight(row) ? levelsOf(row, base) : undefined
    return Array.from(row.matchAll(/[^ ]+/gu)).flatMap(({ 0: word, index: at }, index) => {
      let from = at
      return partsOf(word).map((part, place): Piece => {
        const piece: Piece = {
          text: part,
          spaced: place === 0 && index > 0,
          opens: place === 0 && index === 0 && rowIndex > 0,
          ...japanese,
        }
        const start = from
        from += part.length
        return levels ? directed(piece, levels, start) : piece
      })
    })
  })
}

/** A piece with its part of its paragraph's levels; marks of direction have done their work and are left out. */
function directed(piece: Piece, { base, levels }: Levels, start: number): Piece {
  const units = Array.from({ length: piece.text.length }, (_, at) => piece.text.charAt(at))
  const kept = units.flatMap((unit, at) => (/\p{Bidi_Control}/u.test(unit) ? [] : [at]))
  return {
    ...piece,
    text: kept.map((at) => units[at]).join(''),
    runs: {
      base,
      levels: kept.map((at) => levels[start + at] ?? base),
      space: piece.spaced ? (levels[start - 1] ?? base) : base,
    },
  }
}

const KANA = /[\p{Script=Hiragana}\p{Script=Katakana}]/u

function partsOf(word: string): readonly string[] {
  const parts = word.match(/[^-–—/]*[-–—/]+(?=.)|.+$/gu) ?? [word]
  return IDEOGRAPH.test(word) ? parts.flatMap((part) => part.split(BETWEEN_IDEOGRAPHS)) : parts
}

const IDEOGRAPH = /[\p{scx=Han}\p{scx=Hiragana}\p{scx=Katakana}]/u
/**
 * Where a line of ideographs may break: not after an opening bracket, nor before a closing one, a stop, a small kana or a
 * mark of repetition (UAX #14, classes OP, CL, NS, CJ; the signs met most).
 */
const BETWEEN_IDEOGRAPHS =
  /(?<=[[\p{scx=Han}\p{scx=Hiragana}\p{scx=Katakana}\uff01-\uff60]--[「『（【〈《〔［｛]])(?=[[\p{scx=Han}\p{scx=Hiragana}\p{scx=Katakana}\uff08\uff3b\uff5b]--[」』）】〉》〕］｝、。，．・：；！？ー々ゝゞぁぃぅぇぉっゃゅょァィゥェォッャュョ]])/v

/** Text that stays on one line whatever it holds. */
export function wholePiece(text: string): Line {
  return [{ text, spaced: false, opens: false }]
}

/** A line as it reads. */
export function lineText(line: Line): string {
  return line.map((piece, index) => (piece.spaced && index > 0 ? ' ' : '') + piece.text).join('')
}

/** Whether a line belongs to a paragraph that runs from right to left, and so stands at the right edge. */
export function runsFromRight(line: Line): boolean {
  return (line[0]?.runs?.base ?? 0) % 2 === 1
}

/** The runs of a line, from left to right. A no-break space has done its work by now and is drawn as a space. */
export function runsOfLine(typeface: Typeface, line: Line): readonly Run[] {
  if (line[0]?.runs) return orderedShape(typeface, line).runs
  return line.flatMap((piece, index) => [
    ...(piece.spaced && index > 0 ? typeface.shape(' ').runs : []),
    ...typeface.shape(piece.text.replaceAll('\u00a0', ' '), piece).runs,
  ])
}

/** A line that holds text from right to left, in the order in which it is read from the left. */
function orderedShape(typeface: Typeface, line: Line): Shape {
  const levels = line.flatMap(({ spaced, text, runs }, index) => [
    ...(spaced && index > 0 ? [runs?.space ?? 0] : []),
    ...(runs?.levels ?? Array.from(text, () => 0)),
  ])
  const japanese = line.some((piece) => piece.japanese)
  const runs = inVisualOrder(lineText(line).replaceAll('\u00a0', ' '), {
    base: line[0]?.runs?.base ?? 0,
    levels,
  })
  return joinedShape(
    runs.flatMap(({ text, rightToLeft }) => typeface.shape(text, { rightToLeft, japanese }).runs),
  )
}

/** The width of a line's ink in em. */
export function lineWidth(typeface: Typeface, line: Line): number {
  if (line[0]?.runs) {
    const { left, width, right } = orderedShape(typeface, line)
    return left + width + right
  }
  const space = typeface.shape(' ').width
  const last = line.at(-1)
  return line.reduce(
    (sum, piece, index) =>
      sum + (piece.spaced && index > 0 ? space : 0) + typeface.shape(piece.text, piece).width,
    leftOverhang(typeface, line) + (last ? typeface.shape(last.text, last).right : 0),
  )
}

/** How far a line's ink reaches to the left of where it begins, in em: a j or an î does. */
export function leftOverhang(typeface: Typeface, line: Line): number {
  const first = line[0]
  if (first?.runs) return orderedShape(typeface, line).left
  return first ? typeface.shape(first.text, first).left : 0
}

/** Where a line begins so that its ink stands at the left edge of a room, or at the right one; in em. */
export function lineStart(typeface: Typeface, line: Line, room: number, fromRight: boolean): number {
  const left = leftOverhang(typeface, line)
  return fromRight ? room - lineWidth(typeface, line) + left : left
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
  const base = line[0]?.runs?.base
  const shortened = (count: number) => piecesOf(letters.slice(0, count).join('').trimEnd() + ELLIPSIS, base)
  const count = mostThatFit(
    letters.length,
    (some) => lineWidth(typeface, shortened(some)) <= fit.widthOf(row),
  )
  return shortened(count)
}

/** Breaks a word that is longer than a line, at least one letter off. */
function breakPiece(typeface: Typeface, piece: Piece, width: number): [Piece, Piece] {
  const letters = lettersOf(piece.text)
  const head = (count: number) => cutPiece(piece, 0, letters.slice(0, count).join('').length)
  const count = Math.max(
    1,
    mostThatFit(letters.length - 1, (some) => lineWidth(typeface, [head(some)]) <= width),
  )
  const first = head(count)
  const rest = cutPiece(piece, first.text.length, piece.text.length)
  return [first, { ...rest, spaced: false, opens: false }]
}

/** A piece from one UTF-16 unit to before another. */
function cutPiece(piece: Piece, from: number, to: number): Piece {
  const { runs } = piece
  const text = piece.text.slice(from, to)
  return runs
    ? { ...piece, text, runs: { ...runs, levels: runs.levels.slice(from, to) } }
    : { ...piece, text }
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
