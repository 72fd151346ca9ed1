import { type Message, message } from '../messages/message.ts'
import { textOf, unpack } from './unpack.ts'
import { dayStyles, readPart, sharedTexts, sheetsOf } from './xlsx-parts.ts'

/** One sheet of a workbook as rows of text: numbers with a point, days as YYYY-MM-DD, formulas as last worked out. */
export type Workbook =
  | {
      readonly kind: 'sheet'
      readonly sheets: readonly string[]
      readonly sheet: string
      readonly rows: string[][]
      /** Columns that the workbook does not show, counted from 0. */
      readonly hiddenColumns: ReadonlySet<number>
      readonly hiddenSheets: number
    }
  | { readonly kind: 'refused'; readonly because: Message }

interface Limits {
  readonly rows: number
  readonly columns: number
}

class TooMuch extends Error {
  readonly because: Message

  constructor(because: Message) {
    super(because.id)
    this.because = because
  }
}

/** Days from 1900-01-01 as a workbook counts them, with a 29 February 1900 that never was, to those from 1970. */
const EPOCH_1900 = 25_569
/** A workbook that counts from 1904 is so many days behind (both from memory, checked by an independent reader). */
const DAYS_TO_1904 = 1_462
const DAY_MS = 86_400_000
const LAST_DAY = 2_958_465

/** Reads one sheet of an .xlsx workbook: the one named, else the first that is shown. */
export function readWorkbook(bytes: Uint8Array, limits: Limits, wanted?: string): Workbook {
  const unpacked = unpack(bytes, (name) => /^xl\/.*\.(xml|rels)$/.test(name))
  if (unpacked.kind === 'refused') return unpacked
  const { files } = unpacked
  try {
    const { sheets, from1904 } = sheetsOf(
      textOf(files, 'xl/workbook.xml'),
      textOf(files, 'xl/_rels/workbook.xml.rels'),
    )
    const chosen =
      sheets.find(({ name }) => name === wanted) ?? sheets.find(({ hidden }) => !hidden) ?? sheets[0]
    if (chosen === undefined || !files.has(chosen.path))
      return {
        kind: 'refused',
        because: message('import-file.no-workbook'),
      }
    const cells = {
      texts: sharedTexts(textOf(files, 'xl/sharedStrings.xml')),
      days: dayStyles(textOf(files, 'xl/styles.xml')),
      shift: from1904 ? DAYS_TO_1904 : 0,
    }
    const xml = textOf(files, chosen.path)
    const offered = sheets.filter((sheet) => !sheet.hidden || sheet === chosen)
    return {
      kind: 'sheet',
      sheets: offered.map(({ name }) => name),
      sheet: chosen.name,
      rows: rowsOf(xml, cells, limits),
      hiddenColumns: hiddenColumnsOf(xml, limits),
      hiddenSheets: sheets.length - offered.length,
    }
  } catch (thrown) {
    const because = thrown instanceof TooMuch ? thrown.because : message('import-file.workbook-damaged')
    return { kind: 'refused', because }
  }
}

interface CellFacts {
  readonly texts: readonly string[]
  readonly days: ReadonlySet<number>
  readonly shift: number
}

function rowsOf(xml: string, facts: CellFacts, limits: Limits): string[][] {
  const rows: string[][] = []
  let at = { row: -1, column: -1 }
  let type = ''
  let style = 0
  let value = ''
  let within = false
  readPart(xml, {
    open(name, attributes) {
      if (name === 'row') {
        const { r } = attributes()
        const row = r === undefined ? at.row + 1 : Number(r) - 1
        if (!(row >= 0 && row < limits.rows))
          throw new TooMuch(message('import-file.sheet-too-long', { most: limits.rows }))
        while (rows.length <= row) rows.push([])
        at = { row, column: -1 }
      } else if (name === 'c') {
        const { r, t = 'n', s = '0' } = attributes()
        at = { row: at.row, column: columnOf(r) ?? at.column + 1 }
        type = t
        style = Number(s)
        value = ''
      }
      within = name === 'v' || name === 't'
    },
    close(name) {
      if (name === 'v' || name === 't') within = false
      if (name !== 'c' || value === '') return
      if (at.column >= limits.columns)
        throw new TooMuch(message('import-file.sheet-too-wide', { most: limits.columns }))
      const row = rows[at.row]
      if (row === undefined) return
      while (row.length < at.column) row.push('')
      row[at.column] = shown(value, type, style, facts)
    },
    text(text) {
      if (within) value += text
    },
  })
  return rows
}

/** The columns that a sheet's own list of columns hides. */
function hiddenColumnsOf(xml: string, { columns }: Limits): Set<number> {
  const hidden = new Set<number>()
  readPart(xml, {
    open(name, attributes) {
      if (name !== 'col') return
      const { min = '', max = min, hidden: says = '' } = attributes()
      if (!/^(1|true)$/.test(says)) return
      for (let column = Number(min); column <= Math.min(Number(max), columns); column += 1)
        hidden.add(column - 1)
    },
  })
  return hidden
}

/** The column of a reference such as 'AB12', counted from 0. */
function columnOf(reference: string | undefined): number | null {
  const letters = /^[A-Z]{1,3}/.exec(reference ?? '')?.[0]
  if (letters === undefined) return null
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1
}

function shown(value: string, type: string, style: number, { texts, days, shift }: CellFacts): string {
  if (type === 's') return texts[Number(value)] ?? ''
  if (type === 'b') return value === '1' ? 'yes' : 'no'
  if (type === 'd') return value.slice(0, 10)
  if (type !== 'n') return value
  const number = Number(value)
  if (!Number.isFinite(number)) return value
  const day = number + shift
  if (days.has(style) && day >= 1 && day < LAST_DAY) return dayText(day)
  // A sum that a spreadsheet worked out in binary: 0.1 + 0.2. Three decimals get a fourth, or they would be asked about.
  return String(Number(number.toPrecision(15))).replace(/^(-?\d+\.\d{3})$/, '$10')
}

function dayText(day: number): string {
  // Before March 1900 the count is one behind, since its false leap day is still to come.
  const real = Math.floor(day) + (day < 60 ? 1 : 0)
  return new Date((real - EPOCH_1900) * DAY_MS).toISOString().slice(0, 10)
}
