import { loadPaperFonts } from '../../paper/drawing/fonts.ts'
import type { PrintedDocument } from '../../paper/drawing/paper-document.ts'
import type { Reading } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'

/** What every document of this library says of itself; its title begins with `about`. */
export async function documentFacts(reading: Reading, about: string) {
  const { libraryName, locale, paper } = settingsOf(reading)
  return {
    libraryName,
    date: dayOf(reading)(reading.today),
    paper,
    title: `${about}, ${libraryName}`,
    language: locale,
    fonts: await loadPaperFonts(),
  }
}

/** A finished document as the contract carries it. */
export function made({ bytes, pages, warnings }: PrintedDocument, fileName: string) {
  return { pdf: Buffer.from(bytes).toString('base64'), fileName, pages, warnings: [...warnings] }
}

/** Writes a date out as the library's locale does. */
export function dayOf(reading: Reading): (iso: string) => string {
  const format = new Intl.DateTimeFormat(settingsOf(reading).locale, { dateStyle: 'long', timeZone: 'UTC' })
  return (iso) => format.format(Date.parse(`${iso}T00:00:00Z`))
}
