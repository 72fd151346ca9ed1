import { Blob, Buffer, Direction, Face, Font, shape } from 'harfbuzzjs'
import type { Raster } from './read-pdf.ts'

/** A glyph as HarfBuzz sets it, in units of its font. */
export interface HarfBuzzGlyph {
  readonly id: number
  readonly advance: number
  readonly x: number
  readonly y: number
}

const fonts = new WeakMap<Uint8Array, Font>()

function openFont(bytes: Uint8Array): Font {
  const known = fonts.get(bytes)
  if (known) return known
  const font = new Font(new Face(new Blob(Uint8Array.from(bytes).buffer)))
  fonts.set(bytes, font)
  return font
}

/** Shapes a text by HarfBuzz, from left to right as it is seen; its script tells its direction, except `fromLeft`. */
export function shapedByHarfBuzz(
  bytes: Uint8Array,
  text: string,
  { fromLeft = false } = {},
): HarfBuzzGlyph[] {
  const buffer = new Buffer()
  buffer.addText(text)
  buffer.guessSegmentProperties()
  if (fromLeft) buffer.setDirection(Direction.LTR)
  shape(openFont(bytes), buffer)
  const at = buffer.getGlyphPositions()
  return buffer.getGlyphInfos().map(({ codepoint: id }, index) => ({
    id,
    advance: at[index]?.xAdvance ?? 0,
    x: at[index]?.xOffset ?? 0,
    y: at[index]?.yOffset ?? 0,
  }))
}

/** What is inked of a picture, cut to its ink: a byte for each dot, row by row, 1 where there is ink. */
export interface Ink {
  readonly width: number
  readonly height: number
  readonly count: number
  readonly dots: Uint8Array
}

/** The ink that HarfBuzz's outlines of glyphs make, one beside the next, at so many dots to the em. */
export function inkByHarfBuzz(bytes: Uint8Array, glyphs: readonly HarfBuzzGlyph[], dotsToEm: number): Ink {
  const font = openFont(bytes)
  const scale = dotsToEm / unitsOf(bytes)
  let pen = 0
  const edges = glyphs.flatMap(({ id, advance, x, y }) => {
    const found = edgesOf(font.glyphToPath(id), (px, py) => [(pen + x + px) * scale, -(y + py) * scale])
    pen += advance
    return found
  })
  return cutToInk(filled(edges))
}

function unitsOf(bytes: Uint8Array): number {
  return new Face(new Blob(Uint8Array.from(bytes).buffer)).upem
}

type Point = readonly [x: number, y: number]
type Edge = readonly [from: Point, to: Point]
const STEPS = 8

/** The outline of a glyph as straight edges; its path holds moves, lines and quadratic curves. */
function edgesOf(path: string, at: (x: number, y: number) => Point): Edge[] {
  const edges: Edge[] = []
  let start: Point = [0, 0]
  let last: Point = [0, 0]
  const to = (point: Point) => {
    edges.push([last, point])
    last = point
  }
  for (const [, command = '', numbers = ''] of path.matchAll(/([MLQZ])([^MLQZ]*)/gu)) {
    const [a = 0, b = 0, c = 0, d = 0] = numbers.split(/[ ,]/u).map(Number)
    if (command === 'M') {
      start = at(a, b)
      last = start
    } else if (command === 'L') to(at(a, b))
    else if (command === 'Z') to(start)
    else {
      const [from, control, end] = [last, at(a, b), at(c, d)]
      for (let step = 1; step <= STEPS; step++) {
        const t = step / STEPS
        const mix = (axis: 0 | 1) =>
          (1 - t) ** 2 * from[axis] + 2 * t * (1 - t) * control[axis] + t ** 2 * end[axis]
        to([mix(0), mix(1)])
      }
    }
  }
  return edges
}

/** Fills by the nonzero winding rule, a dot where its middle is inside. */
function filled(edges: readonly Edge[]): [x: number, y: number][] {
  const dots: [x: number, y: number][] = []
  const ys = edges.flatMap(([from, to]) => [from[1], to[1]])
  for (let y = Math.floor(Math.min(...ys)); y <= Math.max(...ys); y++) {
    const middle = y + 0.5
    const crossings = edges
      .filter(([[, from], [, to]]) => from <= middle !== to <= middle)
      .map(([[fx, fy], [tx, ty]]) => ({
        x: fx + ((middle - fy) / (ty - fy)) * (tx - fx),
        turn: ty > fy ? 1 : -1,
      }))
      .toSorted((a, b) => a.x - b.x)
    let winding = 0
    crossings.forEach(({ x, turn }, index) => {
      winding += turn
      const next = crossings[index + 1]?.x
      if (winding === 0 || next === undefined) return
      for (let dot = Math.ceil(x - 0.5); dot + 0.5 < next; dot++) dots.push([dot, y])
    })
  }
  return dots
}

/** The ink of a picture of a page. */
export function inkOf({ data, width }: Raster): Ink {
  const dots: [x: number, y: number][] = []
  for (let at = 0; at < data.length; at += 4) {
    if ((data[at] ?? 255) < 128) dots.push([(at / 4) % width, Math.floor(at / 4 / width)])
  }
  return cutToInk(dots)
}

function cutToInk(inked: readonly (readonly [x: number, y: number])[]): Ink {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of inked) {
    left = Math.min(left, x)
    right = Math.max(right, x)
    top = Math.min(top, y)
    bottom = Math.max(bottom, y)
  }
  const width = Math.max(0, right - left + 1)
  const height = Math.max(0, bottom - top + 1)
  const dots = new Uint8Array(width * height)
  for (const [x, y] of inked) dots[(y - top) * width + x - left] = 1
  return { width, height, count: dots.reduce((sum, dot) => sum + dot, 0), dots }
}

/** How much of the ink of two pictures is in both, of what is in either, laid upon one another as well as a dot allows. */
export function alike(one: Ink, other: Ink): number {
  let best = 0
  for (const right of [-1, 0, 1]) {
    for (const down of [-1, 0, 1]) {
      let both = 0
      for (let y = Math.max(0, -down); y < Math.min(one.height, other.height - down); y++) {
        for (let x = Math.max(0, -right); x < Math.min(one.width, other.width - right); x++) {
          both += (one.dots[y * one.width + x] ?? 0) & (other.dots[(y + down) * other.width + x + right] ?? 0)
        }
      }
      best = Math.max(best, both / (one.count + other.count - both))
    }
  }
  return best
}
