import papaparse from 'papaparse'

/** Without it a spreadsheet reads accents as those of its own machine. */
const BYTE_ORDER_MARK = '\uFEFF'

/** One column of a file: its heading, and what stands in it for a row. Numbers stand bare, with a point. */
export type CsvColumn<T> = readonly [heading: string, cell: (row: T) => string | number]

/** Rows as the text of a CSV file (RFC 4180) in UTF-8, with a byte order mark. */
export function csvOf<T>(columns: readonly CsvColumn<T>[], rows: readonly T[]): string {
  const fields = columns.map(([heading]) => heading)
  const data = rows.map((row) => columns.map(([, cell]) => cell(row)))
  // A name that begins with = or @ would be worked out as a formula by the spreadsheet that opens it.
  return BYTE_ORDER_MARK + papaparse.unparse({ fields, data }, { escapeFormulae: true })
}

/** Rows as an exact CSV for programs: nothing is put before what a spreadsheet would take for a formula. */
export function exactCsvOf<T>(columns: readonly CsvColumn<T>[], rows: readonly T[]): string {
  const fields = columns.map(([heading]) => heading)
  const data = rows.map((row) => columns.map(([, cell]) => cell(row)))
  return papaparse.unparse({ fields, data })
}
