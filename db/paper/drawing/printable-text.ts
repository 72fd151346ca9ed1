import { type Message, message } from '../../messages/message.ts'
import { lettersOf } from './letters.ts'
import { readsFromRight } from './text-direction.ts'
import type { Typeface } from './typeface.ts'

/** What is printed in place of a letter that the typeface lacks: an empty box, else a question mark. */
const STAND_INS = ['□', '?']

/** Letters whose parts are joined, or parted, by signs that are not seen. */
const JOINED = /\p{Extended_Pictographic}|\p{Regional_Indicator}|\u20e3|\p{scx=Arabic}|\p{scx=Devanagari}/u
const NO_JOINERS =
  /(?!\p{Join_Control}|\p{Variation_Selector}|[\u{e0020}-\u{e007f}])\p{Default_Ignorable_Code_Point}/gu
const MARK_OF_DIRECTION = /^\p{Bidi_Control}$/u

export interface PrintableText {
  readonly text: string
  /** The letters that had to be replaced, each once. */
  readonly missing: readonly string[]
}

/**
 * Makes text printable in one line: accents joined to their letters, line breaks and tabs to spaces, invisible marks
 * left out, and every letter that no font has replaced by a visible stand-in. Joiners stay where a script or an emoji is
 * drawn by them, and marks of direction where text runs from right to left.
 */
export function printableText(raw: string, typeface: Typeface): PrintableText {
  const standIn = STAND_INS.find((sign) => typeface.has(sign)) ?? ''
  const missing = new Set<string>()
  const directed = readsFromRight(raw)
  const text = lettersOf(raw.normalize('NFC').replace(/[\s\p{Cc}]+/gu, keepUnbroken))
    .map((letter) => {
      if (directed && MARK_OF_DIRECTION.test(letter)) return letter
      const visible = letter.replace(/\p{Default_Ignorable_Code_Point}/gu, '')
      if (typeface.has(visible)) return JOINED.test(letter) ? letter.replace(NO_JOINERS, '') : visible
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

/** The most letters that a warning names. */
const MOST_NAMED = 6

/** Says which letters of a document are not in the typeface; nothing where none is. */
export function lackedLetters(document: Message | string, missing: Iterable<string>): Message[] {
  const all = [...missing]
  if (all.length === 0) return []
  const letters = all.slice(0, MOST_NAMED).join(' ')
  return [message('paper.lacks-letters', { document, letters, more: Math.max(0, all.length - MOST_NAMED) })]
}
