import { getTableColumns, getTableName } from 'drizzle-orm'
import { afterAll, beforeAll, expect, it } from 'vitest'
import * as sets from '../../db/domain/shared/closed-sets.ts'
import { tables } from '../../db/schema/tables.ts'
import { aCollection, type TemporaryCollection } from '../builders/temporary-collection.ts'

let book: TemporaryCollection
beforeAll(async () => {
  book = await aCollection()
})
afterAll(() => book.remove())

const inSchema = Object.values(tables).flatMap((table) =>
  Object.values(getTableColumns(table)).flatMap((column) =>
    column.enumValues === undefined || column.enumValues.length === 0
      ? []
      : [{ table: getTableName(table), column: column.name, values: column.enumValues }],
  ),
)

/** The values that the CHECK of a column lets in, or null where the file lets any in. */
function checkedValues(table: string, column: string): string[] | null {
  const sql = book.collection.sqlite
    .prepare('SELECT sql FROM sqlite_schema WHERE name = ?')
    .pluck()
    .get(table) as string
  const list = new RegExp(String.raw`[("\s]${column}"? (?:IS NULL OR "?${column}"? )?IN \(([^)]*)\)`).exec(
    sql,
  )?.[1]
  return list === undefined ? null : [...list.matchAll(/'([^']*)'/g)].map(([, value]) => value ?? '')
}

it.each(inSchema)('$table.$column takes in the file what the schema says', ({ table, column, values }) => {
  expect(checkedValues(table, column)?.toSorted()).toEqual([...values].toSorted())
})

it('has every set of several fields once', () => {
  const lists = Object.values(sets).filter(Array.isArray) as (readonly string[])[]
  for (const { table, column, values } of inSchema) {
    const same = lists.filter((list) => list.toSorted().join() === values.toSorted().join())
    if (same.length > 0) expect(same, `${table}.${column}`).toContain(values)
  }
})
