import { type Message, message } from '../../messages/message.ts'

/** The fields that may stand in a letter, in braces. */
export const LETTER_FIELDS = [
  'donor',
  'gifts',
  'numbers',
  'received',
  'keeping',
  'date',
  'library',
  'keeper',
] as const

export type LetterField = (typeof LETTER_FIELDS)[number]

/** The letter that the app brings along, its fields to be filled in. */
export function shippedLetter(): Message {
  return message('letters.shipped', {
    donor: '{donor}',
    gifts: '{gifts}',
    received: '{received}',
    keeping: '{keeping}',
    library: '{library}',
    keeper: '{keeper}',
  })
}

/** What the fields become. `gifts` holds the names alone; the list itself is the paper's business. */
export interface LetterFacts extends Readonly<Record<LetterField, string>> {
  /** Who signs within a sentence where no keeper is named: 'the keepers'. */
  readonly keepers: string
}

/** A paragraph of a filled letter, or the place of the list of gifts. */
export type LetterPart =
  | { readonly kind: 'text'; readonly lines: readonly string[] }
  | { readonly kind: 'gifts' }

const FIELD = /\{([^{}\n]*)\}/g
/** Signs that keep a name apart from what runs the other way. */
const ISOLATES = /[\u2066-\u2069]/g

/** The fields of a text that no letter knows, as typed with their braces, each once. */
export function unknownFields(words: string): string[] {
  const found = Array.from(words.matchAll(FIELD), (match) => match[0])
  return [...new Set(found)].filter((field) => fieldOf(field) === null)
}

/**
 * Fills a letter in. A blank line ends a paragraph; {gifts} alone on a line becomes the list.
 *
 * A line that held nothing but fields and is empty when filled is left out; within a sentence a keeper who is not
 * named is whoever `keepers` says. Unknown fields stay as typed.
 */
export function fillLetter(words: string, facts: LetterFacts): LetterPart[] {
  return letterParts(words, (line) => fillLine(line, facts))
}

/** The paragraphs of a letter, each line filled in; a line that is empty then is left out. */
export function letterParts(words: string, fill: (line: string) => string): LetterPart[] {
  const parts: LetterPart[] = []
  let lines: string[] = []
  const close = () => {
    if (lines.length > 0) parts.push({ kind: 'text', lines })
    lines = []
  }
  for (const raw of words.split(/\r?\n/)) {
    const line = raw.replace(ISOLATES, '').trim()
    if (fieldOf(line) === 'gifts') {
      close()
      parts.push({ kind: 'gifts' })
    } else if (line === '') close()
    else {
      const filled = fill(line)
      if (filled !== '') lines.push(filled)
    }
  }
  close()
  return parts
}

function fillLine(line: string, facts: LetterFacts): string {
  const alone = line.replace(FIELD, '').trim() === ''
  return line
    .replace(FIELD, (typed) => {
      const field = fieldOf(typed)
      if (field === null) return typed
      if (facts[field] === '' && field === 'keeper' && !alone) return facts.keepers
      return facts[field]
    })
    .trim()
}

function fieldOf(typed: string): LetterField | null {
  const name = /^\{\s*(\w+)\s*\}$/.exec(typed)?.[1]?.toLowerCase()
  return LETTER_FIELDS.find((field) => field === name) ?? null
}
