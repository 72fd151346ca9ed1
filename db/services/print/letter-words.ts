import { eq } from 'drizzle-orm'
import type { ParsedInput, Result, WriteResult } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { LETTER_FIELDS, SHIPPED_LETTER, unknownFields } from '../../domain/letters/letter-words.ts'
import { collection } from '../../schema/collection-tables.ts'
import type { Reading, Writing } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'

/** The words of the letter and who signs it. */
export interface Words {
  readonly words: string
  readonly keeper: string
}

/** The library's own words, or those shipped, and who signs. */
export function wordsOf(reading: Reading): Words {
  const { letterWords, keeper } = settingsOf(reading)
  return { words: letterWords === '' ? SHIPPED_LETTER : letterWords, keeper }
}

/** The words in force, those shipped, and the fields that may stand in them. */
export function letterWords(reading: Reading): Result<'letter.get'> {
  const fields = Object.entries(LETTER_FIELDS).map(([name, meaning]) => ({ field: `{${name}}`, meaning }))
  return { ...wordsOf(reading), shipped: SHIPPED_LETTER, fields }
}

/** Keeps the library's own words. Refuses a field that no letter knows; empty words go back to those shipped. */
export function changeLetterWords(
  writing: Writing,
  input: ParsedInput<'letter.change'>,
): WriteResult<'letter.change'> {
  const unknown = unknownSentence(input.words)
  if (unknown !== null) {
    refuse('placeholder-unknown', unknown, {
      field: 'words',
      todo: 'Correct it, or write it without braces.',
    })
  }
  const words = input.words === SHIPPED_LETTER ? '' : input.words
  writing.db
    .update(collection)
    .set({ letterWords: words, keeper: input.keeper })
    .where(eq(collection.id, 1))
    .run()
  return { said: 'Changed the words of the thank-you letter', undoable: false }
}

/** Names the fields that no letter knows, or null. */
export function unknownSentence(words: string): string | null {
  const unknown = unknownFields(words)
  if (unknown.length === 0) return null
  const known = Object.keys(LETTER_FIELDS).map((name) => `{${name}}`)
  const one = unknown.length === 1
  return `No letter knows the ${one ? 'field' : 'fields'} ${unknown.join(', ')}. There are ${known.join(', ')}.`
}
