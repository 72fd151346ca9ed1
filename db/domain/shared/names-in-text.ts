import { fold } from './fold.ts'

/** The ways in which a person's name is written: as it is, and with the family name first, as lists have it. */
export function waysToWrite(name: string): string[] {
  const at = name.lastIndexOf(' ')
  if (at < 0) return [name]
  const [given, family] = [name.slice(0, at), name.slice(at + 1)]
  return [name, `${family}, ${given}`, `${family} ${given}`]
}

const WORD = /[\p{L}\p{M}\p{N}'’‘]+/gu
/** Signs that may stand between two words of one name, such as a comma and a line break. */
const WIDEST_GAP = 4
const NUMBER = /\d(?:[\s().\-/\u2010-\u2015]{0,3}\d){3,}/g

interface Word {
  readonly folded: string
  readonly start: number
  readonly end: number
}

/** Where something sought stands in a text: from `start` up to `end`. */
export interface Place {
  readonly start: number
  readonly end: number
}

/**
 * Names and numbers that are looked for in texts, whole words only, the longest first.
 *
 * Capitals, accents and their encoding, apostrophes and the signs between words make no difference: 'ÉMILE-BRÛLARD' is
 * 'Émile Brûlard'. A number is found however its digits are grouped.
 */
export class SoughtInTexts {
  readonly #byFirst = new Map<string, string[][]>()
  readonly #numbers: ReadonlySet<string>

  constructor(names: readonly string[], numbers: readonly string[] = []) {
    this.#numbers = new Set(numbers.map(digitsOf).filter((digits) => digits !== ''))
    for (const words of names.map((name) => fold(name).split(' '))) {
      const [first] = words
      if (first !== undefined && first !== '')
        this.#byFirst.set(first, [...(this.#byFirst.get(first) ?? []), words])
    }
    for (const listed of this.#byFirst.values()) listed.sort((one, other) => other.length - one.length)
  }

  /** Where anything sought stands, in order, none over another. */
  places(text: string): Place[] {
    return apart([...this.#namePlaces(text), ...this.#numberPlaces(text)])
  }

  isIn(text: string): boolean {
    return this.places(text).length > 0
  }

  /** The text with `instead` for everything sought. */
  replaced(text: string, instead: string): string {
    return this.places(text).reduceRight(
      (changed, { start, end }) => changed.slice(0, start) + instead + changed.slice(end),
      text,
    )
  }

  #namePlaces(text: string): Place[] {
    if (this.#byFirst.size === 0) return []
    const words = wordsIn(text)
    return words.flatMap((word, index) => {
      const found = this.#byFirst
        .get(word.folded)
        ?.find((name) => name.every((part, at) => follows(words, index + at, at, part)))
      const last = found === undefined ? undefined : words[index + found.length - 1]
      return last === undefined ? [] : [{ start: word.start, end: last.end }]
    })
  }

  #numberPlaces(text: string): Place[] {
    if (this.#numbers.size === 0) return []
    return [...text.matchAll(NUMBER)]
      .filter(([number]) => this.#numbers.has(digitsOf(number)))
      .map(({ 0: number, index }) => ({ start: index, end: index + number.length }))
  }
}

/** The digits of a telephone number as they are dialled at home and abroad: a leading + or 00 makes no difference. */
function digitsOf(number: string): string {
  return number.replace(/\D/g, '').replace(/^00/, '')
}

function wordsIn(text: string): Word[] {
  return [...text.matchAll(WORD)].map(({ 0: word, index }) => {
    // The possessive of a name is the name: Ada’s.
    const possessive = /['’]s?$/i.exec(word)?.[0].length ?? 0
    const bare = word.slice(0, word.length - possessive)
    return { folded: foldedWord(bare), start: index, end: index + bare.length }
  })
}

function foldedWord(word: string): string {
  return /^[a-z0-9]*$/i.test(word) ? word.toLowerCase() : fold(word)
}

function follows(words: readonly Word[], index: number, at: number, part: string): boolean {
  const word = words[index]
  if (word?.folded !== part) return false
  const before = words[index - 1]
  return at === 0 || before === undefined || word.start - before.end <= WIDEST_GAP
}

function apart(places: readonly Place[]): Place[] {
  const kept: Place[] = []
  for (const place of places.toSorted((one, other) => one.start - other.start || other.end - one.end)) {
    if (place.start >= (kept.at(-1)?.end ?? 0)) kept.push(place)
  }
  return kept
}

/** Changes every text of what is kept, also within JSON, of which keys and structure stay sound; the rest stays to the byte. */
export function inEveryText(kept: string, change: (text: string) => string): string {
  if (!/^\s*[[{"]/.test(kept)) return change(kept)
  let parsed: unknown
  try {
    parsed = JSON.parse(kept)
  } catch {
    // A text that only begins like JSON.
    return change(kept)
  }
  const changed = JSON.stringify(walked(parsed, change))
  return changed === JSON.stringify(parsed) ? kept : changed
}

function walked(value: unknown, change: (text: string) => string): unknown {
  if (typeof value === 'string') return inEveryText(value, change)
  if (Array.isArray(value)) return value.map((part) => walked(part, change))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [change(key), walked(part, change)]))
}
