import { PDFDocument, PrintScaling } from 'pdf-lib'
import type { PaperFonts } from './fonts.ts'
import { type FaceName, openFont, openTypeface, type Typeface } from './typeface.ts'

/** A document that was made. */
export interface PrintedDocument {
  readonly bytes: Uint8Array
  readonly pages: number
  readonly warnings: readonly string[]
}

/** What every document says of itself. */
export interface DocumentFacts {
  /** Shown in the window's title bar. */
  readonly title: string
  /** The language tag of the texts, such as 'en-GB'. */
  readonly language: string
}

/** The typefaces that paper is set in, to measure with. */
export function openFaces(fonts: PaperFonts): Record<FaceName, Typeface> {
  const known = opened.get(fonts)
  if (known) return known
  const faces = {
    regular: openTypeface(fonts.regular),
    italic: openTypeface(fonts.italic),
    semibold: openTypeface(fonts.semibold),
    bold: openTypeface(fonts.bold),
    number: openTypeface(fonts.semibold, { zero: true }),
  }
  opened.set(fonts, faces)
  return faces
}

/** Words that were measured for one document need not be measured again for the next, while its fonts are held. */
const opened = new WeakMap<PaperFonts, Record<FaceName, Typeface>>()

/** An empty document that asks the printer for its true size. It holds no date: equal input gives equal bytes. */
export async function startDocument({ title, language }: DocumentFacts): Promise<PDFDocument> {
  const document = await PDFDocument.create({ updateMetadata: false })
  document.registerFontkit({ create: openFont })
  document.setTitle(title, { showInWindowTitleBar: true })
  document.setLanguage(language)
  document.setCreator('Common Drawer')
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None)
  return document
}
