import { type Extent, type Features, type FontFile, openFontFile, type Run } from './font-file.ts'
import { lettersOf } from './letters.ts'
import type { OtherFonts, Weight } from './other-fonts.ts'
import { isTurnedByScript, mirrored } from './text-direction.ts'

/** The faces that paper is set in. */
export type FaceName = 'regular' | 'italic' | 'semibold' | 'bold' | 'number'

/** A shaped text, in em: its runs, from left to right. */
export interface Shape extends Extent {
  readonly runs: readonly Run[]
}

/** What is to be known of a text beside its letters. */
export interface ShapedAs {
  readonly rightToLeft?: boolean
  /** Whether ideographs are drawn as in Japan. */
  readonly japanese?: boolean
}

/** A typeface that can be measured: its own font, and others for the letters that this one lacks. */
export interface Typeface {
  /** Whether a letter, as a reader sees it, can be printed. */
  has(letter: string): boolean
  /** Shapes text that runs in one direction. */
  shape(text: string, as?: ShapedAs): Shape
}

/** What a face is printed with where its own font lacks a letter. */
export interface Fallback {
  readonly fonts: OtherFonts
  readonly weight: Weight
}

/**
 * Opens a font for measuring. Letters of it stay single: no ligatures, so that a cut or a search never splits one.
 *
 * Throws RangeError where the bytes are a collection of fonts.
 */
export function openTypeface(bytes: Uint8Array, extra: Features = {}, fallback?: Fallback): Typeface {
  const own = openFontFile(bytes, { liga: false, ...extra })
  const known = [
    new Map<string, Shape>(),
    new Map<string, Shape>(),
    new Map<string, Shape>(),
    new Map<string, Shape>(),
  ]
  const other = (letter: string, japanese: boolean) =>
    fallback?.fonts.find(visible(letter), fallback.weight, japanese)
  const fontOf = (letter: string, japanese: boolean): FontFile => {
    const asEmoji = letter.includes(EMOJI_WANTED)
    if (!asEmoji && own.hasAll(visible(letter))) return own
    return other(letter, japanese) ?? own
  }
  const runsOf = (text: string, { rightToLeft = false, japanese = false }: ShapedAs): Run[] => {
    if (!rightToLeft && own.hasAll(text)) return [own.shape(text)]
    const parts = partsByFont(lettersOf(text), (letter) => fontOf(letter, japanese)).map((part) =>
      part.font === own ? { font: own, letters: part.letters.map(visible) } : part,
    )
    if (!rightToLeft) return parts.map(({ font, letters }) => font.shape(letters.join('')))
    return parts.toReversed().map(({ font, letters }) => font.shape(fromRight(letters)))
  }
  return {
    has: (letter) => own.hasAll(letter) || other(letter, false) !== undefined,
    shape(text, as = {}) {
      const alike = known[(as.rightToLeft ? 1 : 0) + (as.japanese ? 2 : 0)]
      const seen = alike?.get(text)
      if (seen) return seen
      const shape = joinedShape(runsOf(text, as))
      alike?.set(text, shape)
      return shape
    },
  }
}

/** Asks for a sign as an emoji where it could be one of the text as well. */
const EMOJI_WANTED = '\ufe0f'

/** A letter without joiners and variation selectors, which no font needs a glyph for. */
function visible(letter: string): string {
  return letter.replace(/\p{Default_Ignorable_Code_Point}/gu, '')
}

interface Part {
  readonly font: FontFile
  readonly letters: string[]
}

function partsByFont(letters: readonly string[], fontOf: (letter: string) => FontFile): Part[] {
  const parts: Part[] = []
  for (const letter of letters) {
    const font = fontOf(letter)
    const last = parts.at(-1)
    if (last?.font === font) last.letters.push(letter)
    else parts.push({ font, letters: [letter] })
  }
  return parts
}

/**
 * Letters that run from the right, as the font engine is to get them: it turns those of Hebrew and Arabic itself, by
 * their script, and leaves signs that belong to no script as they stand.
 */
function fromRight(letters: readonly string[]): string {
  const facing = letters.map(mirrored)
  return (facing.some(isTurnedByScript) ? facing : facing.toReversed()).join('')
}

/** Shapes beside one another, from left to right, as one. */
export function joinedShape(runs: readonly Run[]): Shape {
  const [only] = runs
  if (only && runs.length === 1) return { ...only, runs }
  let [width, top, bottom, left, right] = [0, 0, 0, 0, 0]
  for (const run of runs) {
    left = Math.max(left, run.left - width)
    width += run.width
    right = Math.max(right, width + run.right)
    top = Math.max(top, run.top)
    bottom = Math.max(bottom, run.bottom)
  }
  return { width, top, bottom, left, right: Math.max(0, right - width), runs }
}
