import { PDFDocument, PrintScaling } from 'pdf-lib'
import type { Message } from '../../messages/message.ts'
import { openFont } from './font-file.ts'
import type { PaperFonts } from './fonts.ts'
import type { Weight } from './other-fonts.ts'
import type { PaperName } from './page-sizes.ts'
import { openPen, type Pen } from './pdf-pen.ts'
import type { Faces } from './text-flow.ts'
import { type FaceName, openTypeface } from './typeface.ts'

/** A document that was made. */
export interface PrintedDocument {
  readonly bytes: Uint8Array
  readonly pages: number
  readonly warnings: readonly Message[]
}

/** What every document says of itself, and the fonts that it is set in. */
export interface DocumentWanted {
  /** Shown in the window's title bar. */
  readonly title: string
  /** The language tag of the texts, such as 'en-GB'. */
  readonly language: string
  readonly fonts: PaperFonts
}

/** A document on pages of one of the usual sizes. */
export interface PagesWanted extends DocumentWanted {
  readonly paper: PaperName
}

/** The typefaces that paper is set in, to measure with. */
export function openFaces(fonts: PaperFonts): Faces {
  const known = opened.get(fonts)
  if (known) return known
  const open = (bytes: Uint8Array, weight: Weight, features = {}) =>
    openTypeface(bytes, features, { fonts: fonts.others, weight })
  const faces = {
    regular: open(fonts.regular, 'regular'),
    italic: open(fonts.italic, 'regular'),
    semibold: open(fonts.semibold, 'semibold'),
    bold: open(fonts.bold, 'bold'),
    number: open(fonts.semibold, 'semibold', { zero: true }),
  }
  opened.set(fonts, faces)
  return faces
}

/** Words that were measured for one document need not be measured again for the next, while its fonts are held. */
const opened = new WeakMap<PaperFonts, Faces>()

/**
 * Draws a document that asks the printer for its true size. It holds no date: equal input gives equal bytes.
 *
 * `used` are the faces that it is set in; `draw` puts it on its pages and answers what could not be printed as asked.
 */
export async function drawDocument(
  { title, language, fonts }: DocumentWanted,
  used: Iterable<FaceName>,
  draw: (pen: Pen, faces: Faces) => Iterable<Message>,
): Promise<PrintedDocument> {
  const document = await PDFDocument.create({ updateMetadata: false })
  document.registerFontkit({ create: openFont })
  document.setTitle(title, { showInWindowTitleBar: true })
  document.setLanguage(language)
  document.setCreator('Common Drawer')
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None)
  const faces = openFaces(fonts)
  const pen = openPen(document, new Map(Array.from(used, (name) => [name, faces[name]])))
  const warnings = [...draw(pen, faces)]
  await pen.finish()
  return { bytes: await document.save(), pages: document.getPageCount(), warnings }
}
