import factory, { type Bidi } from 'bidi-js'

// Its types say a module with a default; Node is given the function itself.
const bidi = (factory as unknown as () => Bidi)()

/** Letters of the scripts that run from right to left, and marks that say so (Unicode's classes R and AL, by block). */
const FROM_RIGHT =
  /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}\u200f\u202b\u202e\u2067]/u

const FROM_RIGHT_LETTER = new RegExp(`(?=${FROM_RIGHT.source})\\p{L}`, 'u')

/** Whether a text holds anything that runs from right to left. */
export function readsFromRight(text: string): boolean {
  return FROM_RIGHT.test(text)
}

/** Whether a letter, and not a digit or a sign, makes a font engine turn its text round: it goes by the script alone. */
export function isTurnedByScript(text: string): boolean {
  return FROM_RIGHT_LETTER.test(text)
}

/** How a paragraph runs: its own level, and that of each UTF-16 unit; an odd level runs from right to left. */
export interface Levels {
  readonly base: number
  readonly levels: readonly number[]
}

/** Emoji beyond the first 65536 signs: bidi-js reads their halves as Latin letters. */
const EMOJI = /[\u{1f000}-\u{1faff}]/gu
const TWO_NEUTRAL_SIGNS = '\u263b\u263b'
/** What parts facts on a line: no figure after it is drawn into the name before it. */
const SEPARATOR = /(?<= )·(?= )/gu

/**
 * The levels of a paragraph by the Unicode Bidirectional Algorithm (UAX #9). `base` is the level of the paragraph that a
 * part of it belongs to; left out, its first letter with a direction decides.
 */
export function levelsOf(paragraph: string, base?: number): Levels {
  const text = paragraph.replace(EMOJI, TWO_NEUTRAL_SIGNS)
  const own = base ?? bidi.getEmbeddingLevels(text, 'auto').paragraphs[0]?.level ?? 0
  const fromRight = own % 2 === 1
  const parted = text.replace(SEPARATOR, fromRight ? '\u05d0' : 'a')
  return { base: own, levels: Array.from(bidi.getEmbeddingLevels(parted, fromRight ? 'rtl' : 'ltr').levels) }
}

/** Text of one level. */
export interface LevelRun {
  readonly text: string
  readonly rightToLeft: boolean
}

/** The parts of a line that run in one direction, in the order in which they stand from left to right. */
export function inVisualOrder(line: string, { base, levels }: Levels): LevelRun[] {
  const all = {
    levels: Uint8Array.from(levels),
    paragraphs: [{ start: 0, end: line.length - 1, level: base }],
  }
  const order = bidi.getReorderedIndices(line, all)
  const runs: { first: number; last: number; level: number }[] = []
  for (const index of order) {
    const level = levels[index] ?? base
    const step = level % 2 === 1 ? -1 : 1
    const run = runs.at(-1)
    if (run && run.level === level && run.last + step === index) run.last = index
    else runs.push({ first: index, last: index, level })
  }
  return runs.map(({ first, last, level }) => ({
    text: line.slice(Math.min(first, last), Math.max(first, last) + 1),
    rightToLeft: level % 2 === 1,
  }))
}

/** A sign as it stands in text from right to left: a bracket turned round. */
export function mirrored(letter: string): string {
  return bidi.getMirroredCharacter(letter) ?? letter
}
