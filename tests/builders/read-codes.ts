import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'
import type { Cell } from '../../db/paper/packets/label-sheets.ts'
import type { Raster } from './read-pdf.ts'

/** A QR code as ZXing reads it; its outline in pixels. */
export interface ReadCode {
  readonly text: string
  readonly errorLevel: string
  readonly modules: number
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Reads every QR code of a page or a part of it with ZXing, offline. */
export async function readCodes(raster: Raster): Promise<ReadCode[]> {
  prepare()
  const found = await readBarcodes(raster as Parameters<typeof readBarcodes>[0], {
    formats: ['QRCode'],
    maxNumberOfSymbols: 255,
  })
  return found.map(({ text, ecLevel, symbol, position }) => ({
    text,
    errorLevel: ecLevel,
    modules: symbol.width,
    left: position.topLeft.x,
    top: position.topLeft.y,
    right: position.bottomRight.x,
    bottom: position.bottomRight.y,
  }))
}

let prepared = false

function prepare(): void {
  if (prepared) return
  const file = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'))
  prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(file).buffer }, fireImmediately: false })
  prepared = true
}

/** The part of a page that a rectangle in millimetres covers. */
export function partOf(raster: Raster, part: Cell, dotsPerInch: number): Raster {
  const dots = (mm: number) => Math.max(0, Math.round((mm * dotsPerInch) / 25.4))
  const [left, top] = [dots(part.x), dots(part.y)]
  const width = Math.min(dots(part.width), raster.width - left)
  const height = Math.min(dots(part.height), raster.height - top)
  const data = new Uint8ClampedArray(width * height * 4)
  for (let row = 0; row < height; row++) {
    const from = ((top + row) * raster.width + left) * 4
    data.set(raster.data.subarray(from, from + width * 4), row * width * 4)
  }
  return { data, width, height, colorSpace: 'srgb' }
}
