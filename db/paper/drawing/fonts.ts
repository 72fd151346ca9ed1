import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'

/** Whole TrueType fonts, as bytes. Only the letters used are put into a PDF. */
export interface PaperFonts {
  readonly regular: Uint8Array
  readonly italic: Uint8Array
  readonly semibold: Uint8Array
  readonly bold: Uint8Array
}

/** Read once for each folder: documents that share their fonts also share what was measured with them. */
const loaded = new Map<string, Promise<PaperFonts>>()

/**
 * Reads the typeface for paper, Source Sans 3 (SIL Open Font License 1.1).
 *
 * `folder` holds SourceSans3-Regular.ttf and its fellows: a packed app passes where it keeps them; left out, they are
 * read from the source-sans package. Rejects with the file system's reason where one is missing.
 */
export function loadPaperFonts(folder: string = packageFolder()): Promise<PaperFonts> {
  const known = loaded.get(folder)
  if (known) return known
  const fonts = readFonts(folder)
  loaded.set(folder, fonts)
  fonts.catch(() => loaded.delete(folder))
  return fonts
}

async function readFonts(folder: string): Promise<PaperFonts> {
  const read = (style: string) => readFile(join(folder, `SourceSans3-${style}.ttf`))
  const [regular, italic, semibold, bold] = await Promise.all([
    read('Regular'),
    read('It'),
    read('Semibold'),
    read('Bold'),
  ])
  return { regular, italic, semibold, bold }
}

function packageFolder(): string {
  return dirname(createRequire(import.meta.url).resolve('source-sans/TTF/SourceSans3-Regular.ttf'))
}
