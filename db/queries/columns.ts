import type { Statement } from 'better-sqlite3'
import { type Column, getTableName } from 'drizzle-orm'
import type { Sqlite } from '../migrations/connection.ts'
import { prepared } from './prepared.ts'

/** A value that SQLite works out, with what it is as it comes out of the file. */
export interface Expression<T> {
  readonly sql: string
  /** Never there: it only tells the compiler what comes out. */
  readonly type?: T
}

type Source = Column | Expression<unknown>

const COUNT: Expression<number> = { sql: 'count(*)' }

/** As SQLite hands it over: a boolean of the schema is 0 or 1. */
type Raw<C extends Column> = C['_']['dataType'] extends 'boolean' ? 0 | 1 : C['_']['data']

type ValueOf<S extends Source> = S extends Column
  ? S['_']['notNull'] extends true
    ? Raw<S>
    : Raw<S> | null
  : S extends Expression<infer T>
    ? T
    : never

/** What a read takes of the file, by the names that its rows give them: once for the SQL and for the type. */
export interface Columns<R> extends Expression<R> {}

/** The row that columns make. */
export type RowOf<C extends Columns<unknown>> = C extends Columns<infer R> ? R : never

/** Columns of the schema and expressions, each under the name that it has in a row. */
export function columns<const S extends Readonly<Record<string, Source>>>(
  named: S,
): Columns<{ readonly [K in keyof S]: ValueOf<S[K]> }> {
  const list = Object.entries(named).map(([name, source]) => `${sqlOf(source)} AS "${name}"`)
  return { sql: list.join(', ') }
}

/** Some columns of a table, under the names that the schema gives them. */
export function pick<T, K extends keyof T>(table: T, ...names: readonly K[]): Pick<T, K> {
  return Object.fromEntries(names.map((name) => [name, table[name]])) as Pick<T, K>
}

/** Several columns as one row. */
export function both<A, B>(some: Columns<A>, others: Columns<B>): Columns<A & B> {
  return { sql: `${some.sql}, ${others.sql}` }
}

/** An expression of SQL; the caller says what it comes to, null too where it may be. */
export function expression<T>(sql: string): Expression<T> {
  return { sql }
}

/** A column of a table that may have no row for this one (LEFT JOIN). */
export function orNull<C extends Column>(column: C): Expression<Raw<C> | null> {
  return { sql: sqlOf(column) }
}

/** A prepared read of these columns; `text` is given their SQL for its SELECT. */
export function select<R>(
  sqlite: Sqlite,
  of: Columns<R>,
  text: (list: string) => string,
): Statement<unknown[], R> {
  return prepared(sqlite, text(of.sql)) as Statement<unknown[], R>
}

/** A prepared read of one value of each row; `text` is given its SQL for its SELECT. */
export function selectValue<S extends Source>(
  sqlite: Sqlite,
  of: S,
  text: (value: string) => string,
): Statement<unknown[], ValueOf<S>> {
  return prepared(sqlite, text(sqlOf(of))).pluck() as Statement<unknown[], ValueOf<S>>
}

/** How many rows there are of what a FROM and a WHERE name. */
export function countOf(sqlite: Sqlite, from: string, ...bound: unknown[]): number {
  return selectValue(sqlite, COUNT, (count) => `SELECT ${count} ${from}`).get(...bound) ?? 0
}

/** Whether there is any row of what a FROM and a WHERE name. */
export function isAny(sqlite: Sqlite, from: string, ...bound: unknown[]): boolean {
  return prepared(sqlite, `SELECT 1 ${from} LIMIT 1`).get(...bound) !== undefined
}

function sqlOf(source: Source): string {
  return 'sql' in source ? source.sql : `"${getTableName(source.table)}"."${source.name}"`
}
