import { eq } from 'drizzle-orm'
import type { Result } from '../../contract/contract.ts'
import type { LanguageCode } from '../../messages/languages.ts'
import type { Message } from '../../messages/message.ts'
import type { Texts } from '../../messages/texts.ts'
import { textsOf } from '../../messages/texts-of.ts'
import { loadPaperFonts } from '../../paper/drawing/fonts.ts'
import type { PrintedDocument } from '../../paper/drawing/paper-document.ts'
import { canonicalPersonId } from '../../queries/person-records.ts'
import { person } from '../../schema/reference-tables.ts'
import type { Reading } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'

/** Whoever tells what is printed: in the library's language, where no other is asked for. */
export function paperTexts(reading: Reading, asked: LanguageCode | null = null): Promise<Texts> {
  return textsOf(settingsOf(reading), asked, 'long')
}

/** The same in the language of somebody who gets it; nobody, or without one of their own: in the library's. */
export function textsFor(reading: Reading, personId: number | null): Promise<Texts> {
  const keptId = personId === null ? undefined : canonicalPersonId(reading.sqlite, personId)
  if (keptId === undefined) return paperTexts(reading)
  const who = reading.db.select({ language: person.language }).from(person).where(eq(person.id, keptId)).get()
  return paperTexts(reading, who?.language || null)
}

/**
 * What every document of this library says of itself; its title begins with `about`.
 *
 * `parts` tell what is on its pages: a document all of whose parts are in one language is of that language.
 */
export async function documentFacts(reading: Reading, about: Message, parts: readonly Texts[] = []) {
  const { libraryName, paper } = settingsOf(reading)
  const own = await paperTexts(reading)
  const [first = own] = parts
  const texts = parts.every((one) => one === first) ? first : own
  return {
    libraryName,
    date: texts.value({ day: reading.today }),
    paper,
    title: `${texts.say(about)}, ${libraryName}`,
    language: texts.locale,
    texts,
    fonts: await loadPaperFonts(),
  }
}

/** A finished document as the contract carries it; what is said of it is said once. */
export function made({ bytes, pages, warnings }: PrintedDocument, fileName: string): Result<'label.print'> {
  const once = new Map(warnings.map((warning) => [JSON.stringify(warning), warning]))
  return { pdf: Buffer.from(bytes).toString('base64'), fileName, pages, warnings: [...once.values()] }
}
