import { create, type Font, type FontCollection } from '@cantoo/fontkit'
import { isTurnedByScript, readsFromRight } from './text-direction.ts'

/** OpenType features by tag. */
export type Features = Readonly<Record<string, boolean>>

/** One glyph of a shaped run: how far the pen moves before and after it beside the glyph's own width, in em. */
export interface PlacedGlyph {
  readonly before: number
  readonly after: number
  readonly rise: number
}

/** Glyphs of a run, from one to before another, that are read as a text whatever they say one by one. */
export interface ReadAs {
  readonly from: number
  readonly to: number
  readonly text: string
}

/**
 * Ink in em: multiply by the type size. `top` and `bottom` are its ink above and below the baseline, `left` and `right`
 * its ink beyond where it begins and where what follows may begin.
 */
export interface Extent {
  readonly width: number
  readonly top: number
  readonly bottom: number
  readonly left: number
  readonly right: number
}

/** Letters of one font, shaped, from left to right. */
export interface Run extends Extent {
  readonly font: FontFile
  readonly text: string
  readonly glyphs: readonly PlacedGlyph[]
  readonly spans: readonly ReadAs[]
}

/** One font. */
export interface FontFile {
  readonly name: string
  readonly bytes: Uint8Array
  readonly features: Features
  /** Whether it has a glyph for each character of a text. */
  hasAll(text: string): boolean
  shape(text: string): Run
}

/** Opens a font for measuring. Throws RangeError where the bytes are a collection of fonts. */
export function openFontFile(bytes: Uint8Array, features: Features): FontFile {
  const font = openFont(bytes)
  const known = new Map<string, Run>()
  const file: FontFile = {
    name: font.postscriptName ?? 'Font',
    bytes,
    features,
    hasAll(text) {
      for (const character of text) {
        if (!font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0)) return false
      }
      return true
    },
    shape(text) {
      const seen = known.get(text)
      if (seen) return seen
      const run = { font: file, text, ...shapeText(font, text, features) }
      known.set(text, run)
      return run
    },
  }
  return file
}

/** Fonts opened before: what their tables hold is read once and not again for each document. */
const openFonts = new WeakMap<Uint8Array, Font>()

/**
 * Opens a font whose glyphs know the letters they stand for, so that a PDF's text can be searched and read aloud.
 *
 * Shaping takes 'Ẹ' apart into an E and a dot below, and then calls the E glyph 'Ẹ' and the dot nothing; every other E of
 * the document would read 'Ẹ'. Such a glyph gets the letter that the font's own table gives it, of several the one that
 * stands in the text. Documents share the font, so each run of text has glyphs of its own.
 */
export function openFont(bytes: Uint8Array): Font {
  const known = openFonts.get(bytes)
  if (known) return known
  const font = create(bytes)
  if (!isSingle(font)) throw new RangeError('Give one font, not a collection of fonts.')
  const [getGlyph, layout] = [font.getGlyph.bind(font), font.layout.bind(font)]
  font.getGlyph = (id, codePoints) => {
    const glyph = getGlyph(id)
    return Object.create(glyph, { codePoints: { value: codePoints ?? [], writable: true } }) as typeof glyph
  }
  // Digits of a script that runs from right to left are written from left to right.
  const fromLeft: typeof layout = (text, features) => layout(text, features, undefined, undefined, 'ltr')
  const own = new Map<number, readonly string[]>()
  font.layout = (text, ...asked) => {
    const run =
      readsFromRight(text) && !isTurnedByScript(text) ? fromLeft(text, ...asked) : layout(text, ...asked)
    const written = text + text.normalize('NFD')
    for (const glyph of run.glyphs) {
      const called = String.fromCodePoint(...glyph.codePoints)
      const simple = called !== '' && called === called.normalize('NFD')
      if (simple && written.includes(called)) continue
      const letters = own.get(glyph.id) ?? font.stringsForGlyph(glyph.id)
      own.set(glyph.id, letters)
      const letter = letters.find((choice) => written.includes(choice)) ?? letters[0]
      if (letter) glyph.codePoints = Array.from(letter, (sign) => sign.codePointAt(0) ?? 0)
    }
    return run
  }
  openFonts.set(bytes, font)
  return font
}

function isSingle(font: Font | FontCollection): font is Font {
  return !('fonts' in font)
}

function shapeText(font: Font, text: string, features: Features): Omit<Run, 'font' | 'text'> {
  const run = font.layout(text, features)
  const em = font.unitsPerEm
  let width = 0
  let top = 0
  let bottom = 0
  let left = 0
  let right = 0
  const glyphs = run.glyphs.map((glyph, index): PlacedGlyph => {
    const at = run.positions?.[index] ?? { xAdvance: glyph.advanceWidth, xOffset: 0, yOffset: 0 }
    const { minX, minY, maxX, maxY } = glyph.bbox
    if (Number.isFinite(maxY)) {
      top = Math.max(top, (maxY + at.yOffset) / em)
      bottom = Math.max(bottom, -(minY + at.yOffset) / em)
      left = Math.max(left, -width - (minX + at.xOffset) / em)
      right = Math.max(right, width + (maxX + at.xOffset) / em)
    }
    width += at.xAdvance / em
    return {
      before: at.xOffset / em,
      after: (at.xAdvance - glyph.advanceWidth - at.xOffset) / em,
      rise: at.yOffset / em,
    }
  })
  const spans = spansOf(
    text,
    run.glyphs.map(({ codePoints }) => String.fromCodePoint(...codePoints)),
  )
  return { width, top, bottom, left, right: Math.max(0, right - width), glyphs, spans }
}

/**
 * Where glyphs do not read, one by one, as what is written: a vowel of Devanagari stands before its letter, and some
 * Arabic letters are drawn as a shape and its dots, which say nothing by themselves. `said` is what each glyph says.
 */
function spansOf(text: string, said: readonly string[]): ReadAs[] {
  if (!isTurnedByScript(text)) {
    const asWritten = !said.includes('') && said.join('').normalize('NFC') === text.normalize('NFC')
    return asWritten ? [] : [{ from: 0, to: said.length, text }]
  }
  const spans: ReadAs[] = []
  let from = 0
  for (const [index, letter] of said.entries()) {
    if (letter === '') continue
    if (from < index) spans.push({ from, to: index + 1, text: letter })
    from = index + 1
  }
  return spans
}
