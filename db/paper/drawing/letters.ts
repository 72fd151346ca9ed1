const letters = new Intl.Segmenter('en', { granularity: 'grapheme' })

/** Text as single letters in the sense of a reader: an accent or an emoji's parts stay with what they belong to. */
export function lettersOf(text: string): string[] {
  return Array.from(letters.segment(text), (segment) => segment.segment)
}
