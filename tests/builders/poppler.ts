import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Raster } from './read-pdf.ts'

/** A word as Poppler reads it, in millimetres from the top left corner of its page. */
export interface PopplerWord {
  readonly page: number
  readonly text: string
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

export interface Poppler {
  words(pdf: Uint8Array): PopplerWord[]
  raster(pdf: Uint8Array, page: number, dotsPerInch: number): Raster
}

const MM_PER_POINT = 25.4 / 72
const OPAQUE = 0xff000000
const GREY = 0x010101
const HOW_TO_GET_IT =
  "Poppler's pdftotext and pdftoppm are not on this machine. Install the package poppler-utils (Debian, Ubuntu) or " +
  'poppler (macOS) to run this second check of the labels.'

/**
 * Poppler, a second reader of PDFs that shares nothing with the first; null where it is not installed, with a line that
 * says so. Throws on a build machine (CI set), which must have it.
 */
export function findPoppler(): Poppler | null {
  const found = ['pdftotext', 'pdftoppm'].every((program) => spawnSync(program, ['-v']).error === undefined)
  if (found) return { words, raster }
  if (process.env['CI']) throw new Error(HOW_TO_GET_IT)
  console.warn(`NOT RUN: ${HOW_TO_GET_IT}`)
  return null
}

function words(pdf: Uint8Array): PopplerWord[] {
  return withFile(pdf, (file) => {
    const html = execFileSync('pdftotext', ['-bbox', '-enc', 'UTF-8', file, '-'], {
      encoding: 'utf8',
      maxBuffer: 1e9,
    })
    return html.split('<page ').flatMap((text, page) =>
      Array.from(
        text.matchAll(
          /<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">(.*?)<\/word>/gu,
        ),
        ([, left, top, right, bottom, word = '']) => ({
          page: page - 1,
          text: unescaped(word),
          left: Number(left) * MM_PER_POINT,
          top: Number(top) * MM_PER_POINT,
          right: Number(right) * MM_PER_POINT,
          bottom: Number(bottom) * MM_PER_POINT,
        }),
      ),
    )
  })
}

function unescaped(text: string): string {
  return text
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&apos;', "'")
    .replaceAll('&amp;', '&')
}

function raster(pdf: Uint8Array, page: number, dotsPerInch: number): Raster {
  return withFile(pdf, (file, folder) => {
    const options = [
      '-r',
      String(dotsPerInch),
      '-gray',
      '-f',
      String(page + 1),
      '-l',
      String(page + 1),
      '-singlefile',
    ]
    execFileSync('pdftoppm', [...options, file, join(folder, 'page')])
    return readGreyMap(readFileSync(join(folder, 'page.pgm')))
  })
}

/** A binary PGM: 'P5', width, height and largest value in ASCII, then a byte a pixel. */
function readGreyMap(file: Uint8Array): Raster {
  const header = /^P5\s+(\d+)\s+(\d+)\s+255\s/u.exec(new TextDecoder('latin1').decode(file.subarray(0, 64)))
  if (!header) throw new Error('pdftoppm did not write a grey map.')
  const [width, height] = [Number(header[1]), Number(header[2])]
  const pixels = file.subarray(header[0].length)
  // A whole pixel at once: red, green and blue alike, and opaque.
  const words = Uint32Array.from({ length: width * height }, (_, at) => OPAQUE + (pixels[at] ?? 255) * GREY)
  return { data: new Uint8ClampedArray(words.buffer), width, height, colorSpace: 'srgb' }
}

function withFile<T>(pdf: Uint8Array, use: (file: string, folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'labels-'))
  try {
    const file = join(folder, 'labels.pdf')
    writeFileSync(file, pdf)
    return use(file, folder)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
