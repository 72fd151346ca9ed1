import { create, type Font, type FontCollection } from '@cantoo/fontkit'

/** OpenType features by tag. */
export type Features = Readonly<Record<string, boolean>>

/** One glyph of a shaped word: how far the pen moves before and after it beside the glyph's own width, in em. */
export interface PlacedGlyph {
  readonly before: number
  readonly after: number
  readonly rise: number
}

/** A shaped word, in em: multiply by the type size. `top` and `bottom` are its ink above and below the baseline. */
export interface Shape {
  readonly width: number
  readonly top: number
  readonly bottom: number
  readonly glyphs: readonly PlacedGlyph[]
}

/** A font that can be measured. Letters stay single: no ligatures, so that a cut or a search never splits one. */
export interface Typeface {
  readonly name: string
  readonly bytes: Uint8Array
  readonly features: Features
  has(codePoint: number): boolean
  shape(text: string): Shape
}

/** Opens a font for measuring. Throws RangeError where the bytes are a collection of fonts. */
export function openTypeface(bytes: Uint8Array, extra: Features = {}): Typeface {
  const font = create(bytes)
  if (!isSingle(font)) throw new RangeError('Give one font, not a collection of fonts.')
  const features = { liga: false, ...extra }
  const known = new Map<string, Shape>()
  return {
    name: font.postscriptName ?? 'Font',
    bytes,
    features,
    has: (codePoint) => font.hasGlyphForCodePoint(codePoint),
    shape(text) {
      const seen = known.get(text)
      if (seen) return seen
      const shape = shapeText(font, text, features)
      known.set(text, shape)
      return shape
    },
  }
}

function isSingle(font: Font | FontCollection): font is Font {
  return !('fonts' in font)
}

function shapeText(font: Font, text: string, features: Features): Shape {
  const run = font.layout(text, features)
  const em = font.unitsPerEm
  let width = 0
  let top = 0
  let bottom = 0
  const glyphs = run.glyphs.map((glyph, index): PlacedGlyph => {
    const at = run.positions?.[index] ?? { xAdvance: glyph.advanceWidth, xOffset: 0, yOffset: 0 }
    width += at.xAdvance / em
    if (Number.isFinite(glyph.bbox.maxY)) {
      top = Math.max(top, (glyph.bbox.maxY + at.yOffset) / em)
      bottom = Math.max(bottom, -(glyph.bbox.minY + at.yOffset) / em)
    }
    return {
      before: at.xOffset / em,
      after: (at.xAdvance - glyph.advanceWidth - at.xOffset) / em,
      rise: at.yOffset / em,
    }
  })
  return { width, top, bottom, glyphs }
}
