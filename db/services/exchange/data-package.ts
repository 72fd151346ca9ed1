import { refuse } from '../../contract/refusal.ts'
import { fold } from '../../domain/shared/fold.ts'
import { type PackedField, packTables, type ReadTable, readPackage } from '../../exchange/package-files.ts'
import { english } from '../../messages/english.ts'
import { message } from '../../messages/message.ts'
import { indexAccession } from '../../queries/search-words.ts'
import {
  isUnwritten,
  type Kept,
  putWholeTables,
  type WholeColumn,
  type WholeTable,
  wholeRows,
  wholeTables,
} from '../../queries/whole-tables.ts'
import type { Reads } from '../book/context.ts'
import { settingsOf } from '../book/settings.ts'
import { withheldOf, withholdingOf } from '../people/withhold.ts'
import { unpublishedLeftOut } from './unpublished.ts'

const TYPES = { INTEGER: 'integer', REAL: 'number', TEXT: 'string' } as const

/** Units and forms by how a column's name ends. */
const ENDINGS: readonly (readonly [RegExp, string])[] = [
  [/_mg$/, 'whole milligrams'],
  [/_ug$/, 'whole micrograms'],
  [/_g$/, 'grams'],
  [/_m$|^metres$/, 'metres'],
  [/_mm$/, 'millimetres'],
  [/_cc$/, 'hundredths of a degree Celsius'],
  [/_pm$/, 'relative humidity, per mille'],
  [/percent$/, 'per cent'],
  [/_area$/, 'square metres'],
  [/(_on|_date|^since|_since|^due|_by)$/, 'a calendar date, YYYY-MM-DD'],
  [/_at$/, 'a moment, ISO 8601'],
  [/_folded$/, 'the name without case and accents, as it is searched'],
  [/^(latitude|longitude)$/, 'decimal degrees'],
]

/** The whole collection as a Data Package, without people and exact places unless they were asked for. */
export const makePackage: Reads<'package.export'> = (reading, input) => {
  const withheld = withheldOf(reading, input)
  const { libraryName } = settingsOf(reading)
  const withholding = withholdingOf(reading, input)
  const published = unpublishedLeftOut(reading)
  const tables = wholeTables(reading.sqlite).map((table) => ({
    name: table.name,
    fields: table.columns.map((column) => fieldOf(column)),
    primaryKey: table.columns.filter(({ key }) => key).map(({ name }) => name),
    rows: withholding.rows(table, published(table, wholeRows(reading.sqlite, table))),
  }))
  const name = fold(libraryName).replace(/[^a-z0-9]+/g, '-') || 'collection'
  const description = [
    'A whole seed collection: gifts, lots and the ledger of every seed in and out.',
    ...withheld.map(english.say),
  ].join(' ')
  const facts = { name, title: libraryName, description, created: reading.now.toISOString() }
  const bytes = packTables(facts, tables)
  return {
    fileName: `${name}-${reading.today}.zip`,
    content: Buffer.from(bytes).toString('base64'),
    tables: tables.length,
    rows: tables.reduce((sum, { rows }) => sum + rows.length, 0),
    withheld,
  }
}

function fieldOf({ name, type, required, names }: WholeColumn): PackedField {
  const unit = ENDINGS.find(([ending]) => ending.test(name))?.[1] ?? ''
  const description = names === null ? unit : `the id of a row of ${names}`
  return { name, type: TYPES[type], description, required, names }
}

/** Reads a package into a collection in which nothing was written. Refuses any other, and a package that does not hold together. */
export const readPackageBack: Reads<'package.import'> = (reading, input) => {
  const { sqlite } = reading
  if (!isUnwritten(sqlite))
    refuse('collection-not-empty', message('package.not-empty'), {
      field: 'content',
      todo: message('package.not-empty-todo'),
    })
  const read = readPackage(Buffer.from(input.content, 'base64'))
  if (read.kind === 'refused') return refuse('package-unreadable', read.because, { field: 'content' })
  const tables = wholeTables(sqlite).map((table) => ({
    ...table,
    rows: rowsFor(table, read.tables.get(table.name)),
  }))
  const { kind } = settingsOf(reading)
  try {
    putWholeTables(
      sqlite,
      tables.map((table) => (table.name === 'collection' ? ofKind(table, kind) : table)),
    )
  } catch (thrown) {
    const because = thrown instanceof Error ? thrown.message : ''
    refuse('package-unreadable', message('package.not-whole', { because }), {
      field: 'content',
    })
  }
  const ids = sqlite.prepare('SELECT id FROM accession').pluck().all() as number[]
  sqlite.transaction(() => {
    for (const id of ids) indexAccession(sqlite, id)
  })()
  const rows = tables.reduce((sum, table) => sum + table.rows.length, 0)
  return { tables: tables.length, rows, said: message('package.read', { accessions: ids.length }) }
}

/** A collection stays what it was started as: the demonstration's package does not make another demonstration. */
function ofKind(table: WholeTable & { readonly rows: readonly Kept[][] }, kind: string) {
  const at = table.columns.findIndex(({ name }) => name === 'kind')
  return { ...table, rows: table.rows.map((row) => row.with(at, kind)) }
}

function rowsFor(table: WholeTable, read: ReadTable | undefined): Kept[][] {
  const wanted = table.columns.map(({ name }) => name)
  if (read === undefined || read.fields.join() !== wanted.join())
    return refuse('package-unreadable', message('package.other-table', { table: table.name }), {
      field: 'content',
      todo: message('package.other-table-todo'),
    })
  return read.rows.map((row, index) =>
    table.columns.map((column, at) =>
      valueFor(column, row[at], { file: `${table.name}.csv`, row: index + 2 }),
    ),
  )
}

function valueFor(
  { name, type, required }: WholeColumn,
  cell: string | null | undefined,
  where: { readonly file: string; readonly row: number },
): Kept {
  if (cell === undefined || (cell === null && required))
    return refuse('package-unreadable', message('package.cell-missing', { ...where, column: name }), {
      field: 'content',
    })
  if (cell === null || type === 'TEXT') return cell
  const number = Number(cell)
  const fits =
    cell.trim() !== '' && (type === 'REAL' ? Number.isFinite(number) : Number.isSafeInteger(number))
  return fits
    ? number
    : refuse('package-unreadable', message('package.cell-no-number', { ...where, column: name }), {
        field: 'content',
      })
}
