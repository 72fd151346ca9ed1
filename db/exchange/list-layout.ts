import { readAmount } from '../domain/amounts/read-amount.ts'
import { readHarvestYear } from '../domain/dates/harvest-year.ts'
import { isContact } from '../domain/shared/contact-shapes.ts'
import { fold } from '../domain/shared/fold.ts'
import { addedColumns, fieldOfHeading, isContactHeading, type ListField } from './list-fields.ts'
import { readMoment } from './logger-dates.ts'
import { codeOfHeading } from './mcpd-table.ts'

/** What a column is used for: a field, an MCPD descriptor by its code, or nothing. */
export type ColumnUse = ListField | 'leave-out' | (string & {})

/** Where the list stands in its file, and what each of its columns holds. */
export interface ListLayout {
  /** The row of the headings, counted from 0; -1 where there are none. */
  readonly headingRow: number
  readonly headings: readonly string[]
  readonly columns: readonly ColumnUse[]
  /** Whether the headings are those of the Multi-Crop Passport Descriptors. */
  readonly passport: boolean
}

const LOOKED_AT = 20
const SAMPLED = 200

/**
 * Guesses the layout of a list: its headings by their words, and a column without a known heading by what is in it.
 *
 * A column that its workbook hides is no note: what somebody put out of sight is not told to others unasked.
 */
export function guessLayout(
  rows: readonly (readonly string[])[],
  crops: ReadonlySet<string>,
  headingRow = headingRowOf(rows),
  hidden: ReadonlySet<number> = new Set(),
): ListLayout {
  const width = rows.reduce((widest, row) => Math.max(widest, row.length), 0)
  const all = Array.from({ length: width }, (_, index) => index)
  const headings = all.map((index) => (rows[headingRow]?.[index] ?? '').trim())
  const codes = headings.map(codeOfHeading)
  const below = rows.slice(headingRow + 1)
  const sample = below.slice(0, SAMPLED)
  const ours = addedColumns(headings)
  const shut = (index: number) =>
    index < ours || saysNothing(index, below) || isOfContact(headings[index] ?? '', index, sample)
  // GENUS alone could be anybody's heading; with a number beside it, it is the standard's.
  if (codes.includes('ACCENUMB') && (codes.includes('GENUS') || codes.includes('INSTCODE'))) {
    const columns = codes.map(
      (code, index) =>
        code ?? (shut(index) || hidden.has(index) || saysNothing(index, below) ? 'leave-out' : 'note'),
    )
    return { headingRow, headings, columns, passport: true }
  }
  const named = headings.map((heading) => fieldOfHeading(heading))
  const columns = all.map((index) => {
    const use = named[index] ?? null
    if (shut(index) || (hidden.has(index) && (use === null || use === 'note'))) return 'leave-out'
    return use ?? byContents(index, below, named, crops)
  })
  return { headingRow, headings, columns: once(columns), passport: false }
}

/** The first row with two headings known here, else a first row of words above rows with numbers; or -1. */
function headingRowOf(rows: readonly (readonly string[])[]): number {
  const head = rows.slice(0, LOOKED_AT)
  const known = head.findIndex(
    (row) => row.filter((cell) => fieldOfHeading(cell) !== null || codeOfHeading(cell) !== null).length > 1,
  )
  if (known >= 0) return known
  const hasDigit = (row: readonly string[]) => row.some((cell) => /\p{Number}/u.test(cell))
  const first = head.findIndex((row) => row.some((cell) => cell.trim() !== ''))
  const words = head[first]?.filter((cell) => cell.trim() !== '') ?? []
  const below = head.slice(first + 1).filter((row) => row.some((cell) => cell.trim() !== ''))
  return words.length > 1 && !hasDigit(words) && below.length > 0 && below.every(hasDigit) ? first : -1
}

function saysNothing(index: number, below: readonly (readonly string[])[]): boolean {
  return below.every((row) => (row[index] ?? '').trim() === '')
}

/** Whether a column says how somebody is reached: by its heading, or by most of what is in it. */
function isOfContact(heading: string, index: number, sample: readonly (readonly string[])[]): boolean {
  if (isContactHeading(heading)) return true
  const cells = sample.map((row) => row[index] ?? '').filter((cell) => cell.trim() !== '')
  return cells.filter(isContact).length > cells.length / 2
}

/** What a column seems to hold: whichever of the forms fits more than half of its cells. The rest goes to the note. */
function byContents(
  index: number,
  below: readonly (readonly string[])[],
  named: readonly (ListField | null)[],
  crops: ReadonlySet<string>,
): ColumnUse {
  const cells = below
    .slice(0, SAMPLED)
    .map((row) => (row[index] ?? '').trim())
    .filter((cell) => cell !== '')
  if (cells.length === 0) return saysNothing(index, below) ? 'leave-out' : 'note'
  if (countsUp(cells)) return 'leave-out'
  const most = (fits: (cell: string) => boolean) => cells.filter(fits).length > cells.length / 2
  const free = (field: ListField) => !named.includes(field)
  if (free('crop') && most((cell) => crops.has(fold(cell)))) return 'crop'
  if (
    free('harvest') &&
    most((cell) => /\d{4}/.test(cell) && readHarvestYear(cell, 9_999).kind === 'harvest')
  )
    return 'harvest'
  if (free('received') && most((cell) => readMoment(cell) !== null)) return 'received'
  if (
    free('amount') &&
    most((cell) => /[a-z]/i.test(cell) && readAmount(cell, { packetSeeds: 10 }).kind === 'amount')
  )
    return 'amount'
  const noHeadings = named.every((field) => field === null)
  if (noHeadings && most((cell) => /\p{Letter}/u.test(cell) && cell.length < 60)) return 'variety'
  return 'note'
}

/** Whether a column only numbers the rows; a word below them, as beside a sum, does not count. */
function countsUp(cells: readonly string[]): boolean {
  const numbers = cells.filter((cell) => /^\d+$/.test(cell))
  const most = numbers.length > 2 && numbers.length >= cells.length - 2
  return most && numbers.every((number, index) => number === String(index + 1))
}

/** Each field but the note and the amount is held by one column; a second of its kind goes to the note. */
function once(columns: readonly ColumnUse[]): ColumnUse[] {
  return columns.map((use, index) =>
    ['note', 'amount', 'leave-out'].includes(use) || columns.indexOf(use) === index ? use : 'note',
  )
}
