import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { init, type WrappedPdfiumModule } from '@embedpdf/pdfium'

/** A box in millimetres from the top left corner of the page. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

export interface ReadCharacter {
  readonly character: string
  /** What is inked of it; of a space, an empty box. */
  readonly ink: Box
  /** Where it stands on its baseline. */
  readonly at: { readonly x: number; readonly y: number }
  readonly sizePt: number
}

/** A part of a page in millimetres from its top left corner. */
export interface Rectangle {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** A page as pixels: 8 bit red, green, blue, alpha. */
export interface Raster {
  readonly data: Uint8ClampedArray
  readonly width: number
  readonly height: number
  readonly colorSpace: 'srgb'
}

export interface ReadPage {
  readonly widthMm: number
  readonly heightMm: number
  readonly characters: readonly ReadCharacter[]
  /** The page as it prints, or only what lies within a rectangle of it, millimetres. */
  raster(dotsPerInch: number, within?: Rectangle): Raster
}

export interface ReadPdf {
  readonly title: string
  readonly language: string
  readonly pages: readonly ReadPage[]
  close(): void
}

const MM_PER_POINT = 25.4 / 72
const FOUR_BYTES_A_PIXEL = 4
const WHITE = 0xffffffff

let opened: Promise<WrappedPdfiumModule> | undefined

/** PDFium, the reader inside Chromium and Electron, as WebAssembly: no other program is needed. */
function pdfium(): Promise<WrappedPdfiumModule> {
  opened ??= (async () => {
    const file = readFileSync(createRequire(import.meta.url).resolve('@embedpdf/pdfium/pdfium.wasm'))
    const engine = await init({ wasmBinary: new Uint8Array(file).buffer })
    engine.PDFiumExt_Init()
    return engine
  })()
  return opened
}

/** Reads a PDF back with PDFium. Close it when done. */
export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const engine = await pdfium()
  const memory = engine.pdfium
  const file = memory.wasmExports.malloc(bytes.length)
  memory.HEAPU8.set(bytes, file)
  const document = engine.FPDF_LoadMemDocument(file, bytes.length, '')
  if (document === 0) throw new Error(`PDFium cannot open this PDF: reason ${engine.FPDF_GetLastError()}.`)
  const count = engine.FPDF_GetPageCount(document)
  return {
    title: utf16(engine, (buffer, size) => engine.FPDF_GetMetaText(document, 'Title', buffer, size)),
    language: utf16(engine, (buffer, size) => engine.FPDFCatalog_GetLanguage(document, buffer, size)),
    pages: Array.from({ length: count }, (_, index) => readPage(engine, document, index)),
    close() {
      engine.FPDF_CloseDocument(document)
      memory.wasmExports.free(file)
    },
  }
}

function readPage(engine: WrappedPdfiumModule, document: number, index: number): ReadPage {
  const page = engine.FPDF_LoadPage(document, index)
  const heightMm = engine.FPDF_GetPageHeightF(page) * MM_PER_POINT
  const widthMm = engine.FPDF_GetPageWidthF(page) * MM_PER_POINT
  const characters = readCharacters(engine, page, heightMm)
  engine.FPDF_ClosePage(page)
  const raster = (dotsPerInch: number, within = { x: 0, y: 0, width: widthMm, height: heightMm }) =>
    readRaster(engine, document, index, dotsPerInch, within)
  return { widthMm, heightMm, characters, raster }
}

function readCharacters(engine: WrappedPdfiumModule, page: number, heightMm: number): ReadCharacter[] {
  const text = engine.FPDFText_LoadPage(page)
  const count = engine.FPDFText_CountChars(text)
  const numbers = doubles(engine, 4)
  const characters: ReadCharacter[] = []
  for (let index = 0; index < count; index++) {
    if (engine.FPDFText_IsGenerated(text, index) === 1) continue
    const [a, b, c, d] = numbers.pointers
    engine.FPDFText_GetCharBox(text, index, a, b, c, d)
    const [left = 0, right = 0, bottom = 0, top = 0] = numbers.read().map((points) => points * MM_PER_POINT)
    engine.FPDFText_GetCharOrigin(text, index, a, b)
    const [x = 0, y = 0] = numbers.read().map((points) => points * MM_PER_POINT)
    characters.push({
      character: engine.FPDFText_IsHyphen(text, index) === 1 ? '-' : unicodeAt(engine, text, index),
      ink: { left, top: heightMm - top, right, bottom: heightMm - bottom },
      at: { x, y: heightMm - y },
      sizePt: engine.FPDFText_GetFontSize(text, index),
    })
  }
  numbers.free()
  engine.FPDFText_ClosePage(text)
  return characters
}

/** A letter's code; a hyphen at the end of a line is asked for apart, since PDFium takes it for a division. */
function unicodeAt(engine: WrappedPdfiumModule, text: number, index: number): string {
  return String.fromCodePoint(engine.FPDFText_GetUnicode(text, index))
}

function readRaster(
  engine: WrappedPdfiumModule,
  document: number,
  index: number,
  dotsPerInch: number,
  within: Rectangle,
): Raster {
  const page = engine.FPDF_LoadPage(document, index)
  const dots = (mm: number) => Math.round((mm * dotsPerInch) / 25.4)
  const pageWidth = dots(engine.FPDF_GetPageWidthF(page) * MM_PER_POINT)
  const pageHeight = dots(engine.FPDF_GetPageHeightF(page) * MM_PER_POINT)
  const [left, top] = [Math.max(0, dots(within.x)), Math.max(0, dots(within.y))]
  const width = Math.min(dots(within.width), pageWidth - left)
  const height = Math.min(dots(within.height), pageHeight - top)
  const bitmap = engine.FPDFBitmap_Create(width, height, 0)
  engine.FPDFBitmap_FillRect(bitmap, 0, 0, width, height, WHITE)
  engine.FPDF_RenderPageBitmap(bitmap, page, -left, -top, pageWidth, pageHeight, 0, 0)
  const start = engine.FPDFBitmap_GetBuffer(bitmap)
  const size = engine.FPDFBitmap_GetStride(bitmap) * height
  const data = new Uint8ClampedArray(engine.pdfium.HEAPU8.slice(start, start + size))
  for (let alpha = FOUR_BYTES_A_PIXEL - 1; alpha < data.length; alpha += FOUR_BYTES_A_PIXEL) data[alpha] = 255
  engine.FPDFBitmap_Destroy(bitmap)
  engine.FPDF_ClosePage(page)
  return { data, width, height, colorSpace: 'srgb' }
}

/** Room in PDFium's memory for some numbers. */
function doubles(engine: WrappedPdfiumModule, count: number) {
  const memory = engine.pdfium
  const start = memory.wasmExports.malloc(count * 8)
  const pointers = [start, start + 8, start + 16, start + 24] as const
  return {
    pointers,
    read: () => pointers.map((pointer) => memory.getValue(pointer, 'double')),
    free: () => memory.wasmExports.free(start),
  }
}

function utf16(engine: WrappedPdfiumModule, fill: (buffer: number, size: number) => number): string {
  const size = fill(0, 0)
  const memory = engine.pdfium
  const buffer = memory.wasmExports.malloc(size)
  fill(buffer, size)
  const text = memory.UTF16ToString(buffer)
  memory.wasmExports.free(buffer)
  return text
}
