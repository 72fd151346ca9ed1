import { type Message, message } from '../messages/message.ts'
import { LIST_FIELDS, type ListField } from './list-fields.ts'
import type { ColumnUse, ListLayout } from './list-layout.ts'
import { MCPD_CODES } from './mcpd-table.ts'

/** The longest that a cell may be; a longer one is a file read wrongly, such as by the wrong delimiter. */
const LONGEST_CELL = 10_000
const FIELDS: ReadonlySet<string> = new Set(LIST_FIELDS)
const CODES: ReadonlySet<string> = new Set(MCPD_CODES)

/** A row of a list by what its cells are for. */
export interface ListRow {
  /** As a spreadsheet numbers it: the first line is 1. */
  readonly row: number
  readonly cells: Readonly<Record<ListField, string>>
  /** The column that a field was taken from, for what its heading says of it. */
  readonly from: Readonly<Partial<Record<ListField, number>>>
  /** A second amount, such as the seeds beside their weight. */
  readonly other: { readonly amount: string; readonly column: number } | null
  /** What it says by descriptors of the Multi-Crop Passport Descriptors. */
  readonly passport: ReadonlyMap<string, string>
}

/** Whether a column may be used so. */
export function isColumnUse(use: string): boolean {
  return use === 'leave-out' || FIELDS.has(use) || CODES.has(use)
}

/** A row by what its columns are used for; null for an empty one, a message for one that cannot be read at all. */
export function listRow(cells: readonly string[], row: number, layout: ListLayout): ListRow | Message | null {
  if (cells.every((cell) => cell.trim() === '')) return null
  if (cells.some((cell) => cell.length > LONGEST_CELL))
    return message('import.cell-too-long', { most: LONGEST_CELL })
  const found = Object.fromEntries(LIST_FIELDS.map((field) => [field, ''])) as Record<ListField, string>
  const from: Partial<Record<ListField, number>> = {}
  const passport = new Map<string, string>()
  let other: ListRow['other'] = null
  const note = (index: number, text: string) => {
    const heading = layout.headings[index] ?? ''
    const named =
      /^(?:note|comment|remark|story|description|bemerkung|notiz|notes|notas?\b|observaci|descripci|historia)/i.test(
        heading,
      ) || heading === ''
    found.note = [found.note, named ? text : `${heading}: ${text}`].filter((part) => part !== '').join('\n')
  }
  for (const [index, cell] of cells.entries()) {
    const text = unguarded(cell.normalize('NFC').replaceAll('\u00A0', ' ').trim())
    const use: ColumnUse = layout.columns[index] ?? 'note'
    if (text === '' || use === 'leave-out') continue
    const isCode = CODES.has(use)
    if (isCode && !passport.has(use)) passport.set(use, text)
    else if (!isCode && use !== 'note' && from[use as ListField] === undefined) {
      found[use as ListField] = text
      from[use as ListField] = index
    } else if (use === 'amount' && other === null) other = { amount: text, column: index }
    else note(index, text)
  }
  return { row, cells: found, from, other, passport }
}

/** A cell without the mark that a guarded CSV puts before what a spreadsheet would take for a formula. */
function unguarded(cell: string): string {
  return /^'[=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell
}
