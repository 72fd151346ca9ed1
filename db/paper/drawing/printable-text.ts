import { type Message, message } from '../../messages/message.ts'
import type { Typeface } from './typeface.ts'

/** What is printed in place of a letter that the typeface lacks: an empty box, else a question mark. */
const STAND_INS = ['□', '?']

export interface PrintableText {
  readonly text: string
  /** The letters that had to be replaced, each once. */
  readonly missing: readonly string[]
}

const letters = new Intl.Segmenter('en', { granularity: 'grapheme' })

/** Text as single letters in the sense of a reader: an accent or an emoji's parts stay with what they belong to. */
export function lettersOf(text: string): string[] {
  return Array.from(letters.segment(text), (segment) => segment.segment)
}

/**
 * Makes text printable in one line: accents joined to their letters, line breaks and tabs to spaces, invisible marks
 * left out, and every letter that the typeface lacks replaced by a visible stand-in.
 */
export function printableText(raw: string, typeface: Typeface): PrintableText {
  const standIn = STAND_INS.find((sign) => hasAll(typeface, sign)) ?? ''
  const missing = new Set<string>()
  const text = lettersOf(raw.normalize('NFC').replace(/[\s\p{Cc}]+/gu, keepUnbroken))
    .map((letter) => {
      const visible = letter.replace(/\p{Default_Ignorable_Code_Point}/gu, '')
      if (hasAll(typeface, visible)) return visible
      missing.add(letter)
      return standIn
    })
    .join('')
  return { text: text.trim(), missing: [...missing] }
}

/** A no-break space holds its neighbours together; every other run of white space is one space. */
function keepUnbroken(space: string): string {
  return /^[\u00a0\u2007\u202f]$/u.test(space) ? '\u00a0' : ' '
}

function hasAll(typeface: Typeface, letter: string): boolean {
  for (const character of letter) if (!typeface.has(character.codePointAt(0) ?? 0)) return false
  return true
}

/** The most letters that a warning names. */
const MOST_NAMED = 6

/** Says which letters of a document are not in the typeface; nothing where none is. */
export function lackedLetters(document: Message | string, missing: Iterable<string>): Message[] {
  const all = [...missing]
  if (all.length === 0) return []
  const letters = all.slice(0, MOST_NAMED).join(' ')
  return [message('paper.lacks-letters', { document, letters, more: Math.max(0, all.length - MOST_NAMED) })]
}
