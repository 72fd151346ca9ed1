import { eq } from 'drizzle-orm'
import type { Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { LETTER_FIELDS, shippedLetter, unknownFields } from '../../domain/letters/letter-words.ts'
import { LANGUAGES } from '../../messages/languages.ts'
import { type Message, message } from '../../messages/message.ts'
import { collection } from '../../schema/collection-tables.ts'
import type { Reading, Writes } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { paperTexts } from './document.ts'

/** The words of the letter and who signs it. */
export interface Words {
  /** Those that the library wrote; null: those shipped, in the language of whoever is written to. */
  readonly words: string | null
  readonly keeper: string
}

/** The words of a letter: those shipped, whatever language they are in, are nobody's own. */
export async function wordsOf(
  reading: Reading,
  { words, keeper }: { readonly words: string; readonly keeper: string },
): Promise<Words> {
  const shipped = await Promise.all(LANGUAGES.map(({ code }) => paperTexts(reading, code)))
  const own = words !== '' && !shipped.some(({ say }) => say(shippedLetter()) === words)
  return { words: own ? words : null, keeper }
}

/** The words in force, those shipped, and the fields that may stand in them. */
export function letterWords(reading: Reading): Result<'letter.get'> {
  const fields = LETTER_FIELDS.map((name) => ({
    field: `{${name}}`,
    meaning: message(`letters.field-${name}`),
  }))
  const { letterWords, keeper } = settingsOf(reading)
  const shipped = shippedLetter()
  return { words: letterWords === '' ? shipped : letterWords, keeper, shipped, fields }
}

/** Keeps the library's own words. Refuses a field that no letter knows; empty words go back to those shipped. */
export const changeLetterWords: Writes<'letter.change'> = (writing, input) => {
  const [unknown] = unknownTold(input.words)
  if (unknown !== undefined) {
    refuse('placeholder-unknown', unknown, {
      field: 'words',
      todo: message('letters.unknown-fields-todo'),
    })
  }
  writing.db
    .update(collection)
    .set({ letterWords: input.words, keeper: input.keeper })
    .where(eq(collection.id, 1))
    .run()
  return { said: message('letters.changed'), undoable: false }
}

/** Names the fields that no letter knows; nothing where there are none. */
export function unknownTold(words: string | null): Message[] {
  const unknown = unknownFields(words ?? '')
  if (unknown.length === 0) return []
  const known = LETTER_FIELDS.map((name) => `{${name}}`).join(', ')
  return [message('letters.unknown-fields', { count: unknown.length, fields: unknown.join(', '), known })]
}
