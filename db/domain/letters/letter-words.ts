/** The fields that may stand in a letter, in braces, with what each becomes. */
export const LETTER_FIELDS = {
  donor: 'the donor’s name',
  gifts: 'the gifts with their numbers and what was told of them; within a sentence, only their names',
  numbers: 'the accession numbers',
  received: 'the day, or the days, on which the gifts came',
  keeping: 'what is done with the gifts: shared, kept as a reserve, or set apart until they are checked',
  date: 'the day of the letter',
  library: 'the name of the library',
  keeper: 'who signs; on a line of its own it is left out where nobody is named',
} as const

export type LetterField = keyof typeof LETTER_FIELDS

/** The letter that the app brings along. */
export const SHIPPED_LETTER = `Dear {donor},

Thank you for the seed that you gave to {library} on {received}. We have written it into our book, so that whoever sows it after you will know where it came from.

{gifts}

{keeping} If you would like to know what became of it, ask us by its number at any time. And if we have put something down wrongly, or you remember more of its story, please tell us.

With warm thanks,

{keeper}
{library}`

/** What the fields become. `gifts` holds the names alone; the list itself is the paper's business. */
export type LetterFacts = Readonly<Record<LetterField, string>>

/** A paragraph of a filled letter, or the place of the list of gifts. */
export type LetterPart =
  | { readonly kind: 'text'; readonly lines: readonly string[] }
  | { readonly kind: 'gifts' }

const FIELD = /\{([^{}\n]*)\}/g

/** The fields of a text that no letter knows, as typed with their braces, each once. */
export function unknownFields(words: string): string[] {
  const found = Array.from(words.matchAll(FIELD), (match) => match[0])
  return [...new Set(found)].filter((field) => fieldOf(field) === null)
}

/**
 * Fills a letter in. A blank line ends a paragraph; {gifts} alone on a line becomes the list.
 *
 * A line that held nothing but fields and is empty when filled is left out; within a sentence a keeper who is not
 * named is 'the keepers'. Unknown fields stay as typed.
 */
export function fillLetter(words: string, facts: LetterFacts): LetterPart[] {
  const parts: LetterPart[] = []
  let lines: string[] = []
  const close = () => {
    if (lines.length > 0) parts.push({ kind: 'text', lines })
    lines = []
  }
  for (const raw of words.split(/\r?\n/)) {
    const line = raw.trim()
    if (fieldOf(line) === 'gifts') {
      close()
      parts.push({ kind: 'gifts' })
    } else if (line === '') close()
    else {
      const filled = fillLine(line, facts)
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
      if (facts[field] === '' && field === 'keeper' && !alone) return 'the keepers'
      return facts[field]
    })
    .trim()
}

function fieldOf(typed: string): LetterField | null {
  const name = /^\{\s*(\w+)\s*\}$/.exec(typed)?.[1]?.toLowerCase() ?? ''
  return Object.hasOwn(LETTER_FIELDS, name) ? (name as LetterField) : null
}
