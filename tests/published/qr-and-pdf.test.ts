import { inflateSync } from 'node:zlib'
import { expect, test } from 'vitest'
import type { ShippedSheet } from '../../db/contract/print-operations.ts'
import { scanCode } from '../../db/domain/numbers/scan-code.ts'
import { QUIET_MODULES, qrCode } from '../../db/paper/drawing/qr-squares.ts'
import { cellAt } from '../../db/paper/packets/label-sheets.ts'
import { CAUTION_TYPE_PT } from '../../db/paper/packets/packet-styles.ts'
import { SHEETS } from '../../db/paper/packets/shipped-sheets.ts'
import { packet, print, TREATED } from '../builders/packets.ts'
import { readCodes } from '../builders/read-codes.ts'
import { type Raster, type ReadPdf, readPdf } from '../builders/read-pdf.ts'
import { SHEETS_TRIED } from '../builders/sheets-tried.ts'

const DOTS = 600
const DOTS_PER_MM = DOTS / 25.4
/** The grey edge of a shape, pixels. */
const BLUR = 2

/** The corner of a page up to the end of its first label, and a little more. */
function firstLabel(pdf: ReadPdf, sheet: ShippedSheet): Raster {
  const label = cellAt(SHEETS[sheet], 0)
  const [page] = pdf.pages
  if (!page) throw new Error('There should be a page.')
  const corner = { x: 0, y: 0, width: label.x + label.width + 5, height: label.y + label.height + 5 }
  return page.raster(DOTS, corner)
}

/** A QR code as rows of '#' and '.'. */
function rows(code: string): string[] {
  const { modules, squares } = qrCode(code)
  const grid = Array.from({ length: modules }, () => Array.from({ length: modules }, () => '.'))
  for (const { x, y, width, height } of squares) {
    for (let row = y; row < y + height; row++) grid[row]?.fill('#', x, x + width)
  }
  return grid.map((row) => row.join(''))
}

/**
 * ISO/IEC 18004 (QR code bar code symbology), as given in makers' public summaries (Keyence, 'What is a QR code', and
 * RealNetworks, 'QR Code Specification', table 3.2.1, both read in November 2026; the standard itself was not read):
 * version 1 has 21 by 21 modules, each further one 4 more; at level M version 1 holds 20 capitals and digits and version
 * 2 holds 38; the margin is four modules.
 */
test.each([
  [1, 21],
  [20, 21],
  [21, 25],
  [38, 25],
  [39, 29],
])('a code of %d characters has %d modules a side', (characters, modules) => {
  expect(qrCode('H'.repeat(characters)).modules).toBe(modules)
})

test('three corners of a code hold the finder: 7 modules, black, white, black in the ratio 1:1:3:1:1', () => {
  const grid = rows('HL260142B7')
  const finder = ['#######', '#.....#', '#.###.#', '#.###.#', '#.###.#', '#.....#', '#######']
  expect(grid.slice(0, 7).map((row) => row.slice(0, 7))).toEqual(finder)
  expect(grid.slice(0, 7).map((row) => row.slice(-7))).toEqual(finder)
  expect(grid.slice(-7).map((row) => row.slice(0, 7))).toEqual(finder)
  expect(grid[6]?.slice(6, 15)).toBe('#.#.#.#.#')
})

test.each(SHEETS_TRIED)(
  '%s: four modules of white on every side of a code, on the label itself',
  async (sheet) => {
    const pdf = await readPdf((await print([packet({ cautions: [TREATED] })], { sheet })).bytes)
    const raster = firstLabel(pdf, sheet)
    const [code] = await readCodes(raster)
    if (!code) throw new Error('There should be a code.')
    const module = (code.right - code.left) / code.modules
    const reach = Math.floor(QUIET_MODULES * module)
    let inked = 0
    for (let y = code.top - reach + BLUR; y < code.bottom + reach - BLUR; y++) {
      for (let x = code.left - reach + BLUR; x < code.right + reach - BLUR; x++) {
        const inside =
          x >= code.left - BLUR && x < code.right + BLUR && y >= code.top - BLUR && y < code.bottom + BLUR
        if (!inside && (raster.data[(y * raster.width + x) * 4] ?? 255) < 128) inked++
      }
    }
    expect(inked).toBe(0)
    const label = cellAt(SHEETS[sheet], 0)
    expect(code.right + reach - BLUR).toBeLessThanOrEqual((label.x + label.width) * DOTS_PER_MM)
    expect(code.bottom + reach - BLUR).toBeLessThanOrEqual((label.y + label.height) * DOTS_PER_MM)
    expect(['M', 'Q', 'H']).toContain(code.errorLevel)
    pdf.close()
  },
)

/** Four dots of a 300 dpi printer to a module (a reader-maker's advice, seen in November 2026 on a public page). */
test.each(SHEETS_TRIED)(
  '%s: modules of at least 0.33 mm, the longest number of the collection too',
  async (sheet) => {
    const lotNumber = 'HLABCDEF2026-00142-AA'
    const pdf = await readPdf(
      (await print([packet({ lotNumber, scanCode: scanCode(lotNumber) })], { sheet })).bytes,
    )
    const raster = firstLabel(pdf, sheet)
    const [code] = await readCodes(raster)
    expect(code?.text).toBe(scanCode(lotNumber))
    const module = ((code?.right ?? 0) - (code?.left ?? 0)) / (code?.modules ?? 1) / DOTS_PER_MM
    expect(module).toBeGreaterThanOrEqual(0.33)
    pdf.close()
  },
)

/** 7 CFR 201.31a (a), read in November 2026: treated seed is labelled 'in type no smaller than 8 point'. */
test('a caution is set in 8 point or larger where there is room', () => {
  expect(CAUTION_TYPE_PT).toBeGreaterThanOrEqual(8)
})

/** The text of a PDF with its packed parts opened. */
async function opened(): Promise<string> {
  const { bytes } = await print([packet({ cautions: [TREATED] })], { title: 'Labels', language: 'en-GB' })
  const file = Buffer.from(bytes)
  const text = file.toString('latin1')
  const parts = Array.from(text.matchAll(/stream\r?\n/gu), (found) => {
    try {
      return inflateSync(file.subarray(found.index + found[0].length)).toString('latin1')
    } catch {
      return ''
    }
  })
  return [text, ...parts].join('\n')
}

/**
 * ISO 32000-1 (Portable document format; from memory): 12.2, a reader shows the title where DisplayDocTitle is true and
 * offers no scaling where PrintScaling is None; 14.9.2, Lang in the catalogue; 9.6.4, a subset's name begins with six
 * capitals and a plus; 8.6.8, the colour operators.
 */
test('the document names its language, shows its title, and asks not to be scaled', async () => {
  const text = await opened()
  expect(text).toMatch(/\/DisplayDocTitle true/u)
  expect(text).toMatch(/\/PrintScaling \/None/u)
  expect(text).toMatch(/\/Lang \(en-GB\)/u)
  expect(text).not.toMatch(/CreationDate|ModDate/u)
})

test('every font is embedded and is a part of the whole', async () => {
  const text = await opened()
  const names = [...new Set(Array.from(text.matchAll(/\/BaseFont \/(\S+)/gu), ([, name = '']) => name))]
  expect(names.length).toBeGreaterThanOrEqual(4)
  for (const name of names) expect(name).toMatch(/^[A-Z]{6}\+SourceSans3-/u)
  expect(text.match(/\/FontFile2 /gu)?.length).toBe(names.length)
})

test('nothing is drawn in another colour than black', async () => {
  const text = await opened()
  const page = text.split('\n').filter((line) => /^[\d\s.[\]<>()A-Za-z/+*-]+$/u.test(line))
  expect(page.some((line) => / TJ$/u.test(line))).toBe(true)
  expect(page.filter((line) => /\d (rg|RG|g|G|k|K)$|\s(cs|CS|sc|SC|scn|SCN)$/u.test(line))).toEqual([])
})
