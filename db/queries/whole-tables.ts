import type { Sqlite } from '../migrations/connection.ts'
import { prepared } from './prepared.ts'

/** A column of a table as the file itself describes it. */
export interface WholeColumn {
  readonly name: string
  readonly type: 'INTEGER' | 'REAL' | 'TEXT'
  readonly required: boolean
  readonly key: boolean
  /** The table that it names a row of, or null. */
  readonly names: string | null
}

export interface WholeTable {
  readonly name: string
  readonly columns: readonly WholeColumn[]
}

/** A value as the file keeps it. */
export type Kept = string | number | null

/** What the file works out by itself again, and what is not in the book: neither goes out nor comes in. */
const LEFT_OUT = new Set(['lot_forecast', 'draft'])
const DERIVED = new Set(['lot.balance_count', 'lot.balance_mass_mg', 'lot.holds_seed'])
/** Written in this order; what is not named here comes after, whatever names what. */
const FIRST = [
  'collection',
  'crop',
  'entry',
  'person',
  'variety',
  'storage_place',
  'accession',
  'lot',
  'withdrawal',
  'movement',
]

/** Every table that the book is made of, those first that others build on. */
export function wholeTables(sqlite: Sqlite): WholeTable[] {
  const listed = sqlite.pragma('table_list') as { schema: string; name: string; type: string }[]
  const names = listed
    .filter(
      ({ schema, name, type }) =>
        schema === 'main' && type === 'table' && !/^(sqlite_|__drizzle|accession_search)/.test(name),
    )
    .map(({ name }) => name)
    .filter((name) => !LEFT_OUT.has(name))
  const rank = (name: string) => (FIRST.includes(name) ? FIRST.indexOf(name) : FIRST.length)
  return names
    .toSorted((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1))
    .map((name) => ({ name, columns: columnsOf(sqlite, name) }))
}

function columnsOf(sqlite: Sqlite, table: string): WholeColumn[] {
  const columns = sqlite.pragma(`table_info(${table})`) as {
    name: string
    type: WholeColumn['type']
    notnull: number
    pk: number
  }[]
  const keys = sqlite.pragma(`foreign_key_list(${table})`) as { id: number; from: string; table: string }[]
  // A key of several columns names a row by more than its id: it is left to the file to hold.
  const single = keys.filter(({ id }) => keys.filter((key) => key.id === id).length === 1)
  return columns
    .filter(({ name }) => !DERIVED.has(`${table}.${name}`))
    .map(({ name, type, notnull, pk }) => ({
      name,
      type,
      required: notnull === 1 || pk > 0,
      key: pk > 0,
      names: single.find(({ from }) => from === name)?.table ?? null,
    }))
}

/** All rows of a table, in the order of its key. */
export function wholeRows(sqlite: Sqlite, { name, columns }: WholeTable): Kept[][] {
  const listed = columns.map((column) => column.name).join(', ')
  const key = columns.filter((column) => column.key).map((column) => column.name)
  const order = key.length === 0 ? 'rowid' : key.join(', ')
  return prepared(sqlite, `SELECT ${listed} FROM ${name} ORDER BY ${order}`).raw().all() as Kept[][]
}

/** Whether nothing was written since the collection was started. */
export function isUnwritten(sqlite: Sqlite): boolean {
  return prepared(sqlite, 'SELECT count(*) FROM entry').pluck().get() === 1
}

/** Puts the rows of a whole book in place of the first rows of an empty one. One transaction: all of it or nothing. */
export function putWholeTables(
  sqlite: Sqlite,
  tables: readonly (WholeTable & { readonly rows: readonly Kept[][] })[],
): void {
  sqlite
    .transaction(() => {
      sqlite.pragma('defer_foreign_keys = ON')
      for (const { name } of tables.toReversed()) sqlite.prepare(`DELETE FROM ${name}`).run()
      for (const { name, columns, rows } of tables) {
        const listed = columns.map((column) => column.name)
        const insert = sqlite.prepare(
          `INSERT INTO ${name} (${listed.join(', ')}) VALUES (${listed.map(() => '?').join(', ')})`,
        )
        for (const row of rows) insert.run(...row)
      }
    })
    .immediate()
}
