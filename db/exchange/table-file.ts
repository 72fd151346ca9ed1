import { type Message, message } from '../messages/message.ts'
import { type Delimiter, readDelimited } from './delimited.ts'
import { type Encoding, readText } from './file-text.ts'
import { readWorkbook } from './xlsx-read.ts'

/** The most that is read of one file; beyond, it is to be cut into parts. */
export const MOST_ROWS = 100_000
export const MOST_COLUMNS = 200

export interface TableChoices {
  readonly sheet?: string | undefined
  readonly encoding?: Encoding | undefined
  readonly delimiter?: Delimiter | undefined
}

/** A file of rows as text, and how it was read; or why it cannot be. */
export type TableFile =
  | {
      readonly kind: 'table'
      readonly rows: readonly string[][]
      readonly sheets: readonly string[]
      readonly sheet: string | null
      /** Columns that its workbook does not show, counted from 0. */
      readonly hiddenColumns: ReadonlySet<number>
      readonly hiddenSheets: number
      readonly encoding: Encoding | null
      readonly encodingGuessed: boolean
      readonly delimiter: Delimiter | null
      readonly quotesAsTheyStand: boolean
    }
  | { readonly kind: 'unreadable'; readonly because: Message }

const OLD_WORKBOOK = [0xd0, 0xcf, 0x11, 0xe0]
const PACKED = [0x50, 0x4b, 0x03, 0x04]

/** Reads a list from a workbook (.xlsx) or a delimited text, by what is in the file and never by its name. */
export function readTableFile(bytes: Uint8Array, choices: TableChoices = {}): TableFile {
  if (begins(bytes, OLD_WORKBOOK)) return unreadable(message('import-file.old-workbook'))
  return begins(bytes, PACKED) ? readSheet(bytes, choices) : readLines(bytes, choices)
}

function readSheet(bytes: Uint8Array, { sheet }: TableChoices): TableFile {
  const book = readWorkbook(bytes, { rows: MOST_ROWS, columns: MOST_COLUMNS }, sheet)
  if (book.kind === 'refused') return unreadable(book.because)
  const { rows, sheets, hiddenColumns, hiddenSheets } = book
  return {
    ...{ hiddenColumns, hiddenSheets },
    ...{ kind: 'table', rows, sheets, sheet: book.sheet, encoding: null, encodingGuessed: false },
    ...{ delimiter: null, quotesAsTheyStand: false },
  }
}

function readLines(bytes: Uint8Array, choices: TableChoices): TableFile {
  const found = readText(bytes, choices.encoding)
  if (found === null) return unreadable(message('import-file.no-list'))
  const read = readDelimited(found.text, MOST_ROWS + 1, choices.delimiter)
  if (read.rows.length > MOST_ROWS)
    return unreadable(message('import-file.too-many-rows', { most: MOST_ROWS }))
  if (read.rows.some((row) => row.length > MOST_COLUMNS))
    return unreadable(message('import-file.too-many-columns', { most: MOST_COLUMNS }))
  return {
    ...{ kind: 'table', rows: read.rows, sheets: [], sheet: null, delimiter: read.delimiter },
    ...{ hiddenColumns: new Set<number>(), hiddenSheets: 0 },
    ...{ encoding: found.encoding, encodingGuessed: found.from === 'guess' },
    quotesAsTheyStand: read.quotesAsTheyStand,
  }
}

function begins(bytes: Uint8Array, sign: readonly number[]): boolean {
  return sign.every((byte, index) => bytes[index] === byte)
}

function unreadable(because: Message): TableFile {
  return { kind: 'unreadable', because }
}
