import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { basename, dirname, join } from 'node:path'
import { type OtherFonts, otherFonts } from './other-fonts.ts'

/** Whole TrueType fonts, as bytes. Only the letters used are put into a PDF. */
export interface PaperFonts {
  readonly regular: Uint8Array
  readonly italic: Uint8Array
  readonly semibold: Uint8Array
  readonly bold: Uint8Array
  /** For letters of other scripts, and emoji. */
  readonly others: OtherFonts
}

/** Read once for each folder: documents that share their fonts also share what was measured with them. */
const loaded = new Map<string | undefined, Promise<PaperFonts>>()

/**
 * Reads the typeface for paper, Source Sans 3 (SIL Open Font License 1.1); fonts for what it lacks are read when a
 * letter needs them.
 *
 * `folder` holds SourceSans3-Regular.ttf, its fellows and the other fonts: a packed app passes where it keeps them; left
 * out, they are read from their packages. Rejects with the file system's reason where Source Sans is missing.
 */
export function loadPaperFonts(folder?: string): Promise<PaperFonts> {
  const known = loaded.get(folder)
  if (known) return known
  const fonts = readFonts(folder)
  loaded.set(folder, fonts)
  fonts.catch(() => loaded.delete(folder))
  return fonts
}

async function readFonts(given: string | undefined): Promise<PaperFonts> {
  const folder = given ?? dirname(inPackages.resolve('source-sans/TTF/SourceSans3-Regular.ttf'))
  const read = (style: string) => readFile(join(folder, `SourceSans3-${style}.ttf`))
  const [regular, italic, semibold, bold] = await Promise.all([
    read('Regular'),
    read('It'),
    read('Semibold'),
    read('Bold'),
  ])
  const others = otherFonts(
    given === undefined ? (file) => inPackages.resolve(file) : (file) => join(given, basename(file)),
  )
  return { regular, italic, semibold, bold, others }
}

const inPackages = createRequire(import.meta.url)
