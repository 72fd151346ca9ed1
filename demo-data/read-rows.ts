import Papa from 'papaparse'
import type { z } from 'zod'

/** A checked row of a file, with where it stands for a sentence about it. */
export interface Row<T> {
  readonly where: string
  readonly cells: T
}

/** So that a file with another separator does not fill the screen. */
const MOST_FAILURES = 10

/**
 * Reads a comma-separated file whose first row names the columns, and checks each row.
 *
 * Throws with every failing cell, its column and its row as a spreadsheet numbers it (the heading is row 1).
 */
export function readRows<S extends z.ZodType>(file: string, text: string, schema: S): Row<z.output<S>>[] {
  const parsed = Papa.parse<Record<string, string>>(text.trimEnd(), { header: true, delimiter: ',' })
  const failures: string[] = []
  for (const { row, message } of parsed.errors) failures.push(`${whereIs(file, row ?? 0)}: ${message}.`)
  const rows: Row<z.output<S>>[] = []
  for (const [index, cells] of failures.length > 0 ? [] : parsed.data.entries()) {
    const where = whereIs(file, index)
    const checked = schema.safeParse(cells)
    if (checked.success) rows.push({ where, cells: checked.data })
    else
      failures.push(...checked.error.issues.map((issue) => `${where}${columnOf(issue)}: ${issue.message}.`))
  }
  if (failures.length > 0) throw new Error(failures.slice(0, MOST_FAILURES).join('\n'))
  return rows
}

function whereIs(file: string, index: number): string {
  return `${file}, row ${index + 2}`
}

function columnOf(issue: z.core.$ZodIssue): string {
  return issue.path.length === 0 ? '' : `, column ${issue.path.join('.')}`
}
