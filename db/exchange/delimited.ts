import papaparse from 'papaparse'

/** The signs that part one cell from the next. */
export const DELIMITERS = [',', ';', '\t', '|'] as const
export type Delimiter = (typeof DELIMITERS)[number]

export interface Delimited {
  readonly rows: string[][]
  readonly delimiter: Delimiter
  /** Whether a quote was opened and never closed, so that quotes were read as they stand. */
  readonly quotesAsTheyStand: boolean
}

const LOOKED_AT = 50

/** Reads the rows of a delimited text, at most so many. Lines end in CR, LF or both; quotes as in RFC 4180. */
export function readDelimited(text: string, most: number, chosen?: Delimiter): Delimited {
  // Some programs say in a first line of its own which sign they use.
  const said = /^sep=([,;|\t])\r?\n/.exec(text)
  const plain = said === null ? text : text.slice(said[0].length)
  const delimiter = chosen ?? (said?.[1] as Delimiter | undefined) ?? delimiterOf(plain)
  const quoted = papaparse.parse<string[]>(plain, { delimiter, preview: most })
  const open = quoted.errors.some(({ code }) => code === 'MissingQuotes')
  const parsed = open
    ? papaparse.parse<string[]>(plain, { delimiter, preview: most, quoteChar: '\u0000' })
    : quoted
  return { rows: parsed.data, delimiter, quotesAsTheyStand: open }
}

/** The sign that gives most of the first rows the same number of cells, more than one; a comma where none does. */
function delimiterOf(text: string): Delimiter {
  const scored = DELIMITERS.map((delimiter) => ({ delimiter, ...evenness(text, delimiter) }))
  const best = scored.toSorted((a, b) => b.share - a.share || b.width - a.width)[0]
  return best === undefined || best.share === 0 ? ',' : best.delimiter
}

function evenness(text: string, delimiter: Delimiter): { share: number; width: number } {
  const { data } = papaparse.parse<string[]>(text, { delimiter, preview: LOOKED_AT })
  const widths = data.filter((row) => row.some((cell) => cell.trim() !== '')).map((row) => row.length)
  const counts = Map.groupBy(
    widths.filter((width) => width > 1),
    (width) => width,
  )
  const [width = 0, rows = []] = [...counts].toSorted((a, b) => b[1].length - a[1].length)[0] ?? []
  return { share: widths.length === 0 ? 0 : Math.round((10 * rows.length) / widths.length), width }
}
