import { alias } from 'drizzle-orm/sqlite-core'
import { expect, onTestFinished, test } from 'vitest'
import { columns, countOf, orNull, pick, select, selectValue } from '../../db/queries/columns.ts'
import { insertRow } from '../../db/queries/rows.ts'
import { labelSheet } from '../../db/schema/print-tables.ts'
import { crop, storagePlace } from '../../db/schema/reference-tables.ts'
import { aCollection } from '../builders/temporary-collection.ts'

async function withPlaces() {
  const { collection, remove } = await aCollection()
  onTestFinished(remove)
  const id = insertRow(collection.sqlite, storagePlace, { name: 'Loft', kind: 'room', path: 'Loft' })
  const shelf = { parentId: id, name: 'Top', kind: 'shelf', path: 'Loft / Top' } as const
  insertRow(collection.sqlite, storagePlace, shelf)
  return collection
}

test('columns of a table read what drizzle reads, an aliased table too', async () => {
  const { sqlite, db } = await withPlaces()
  const drizzled = db.select().from(storagePlace).all()
  const [named, aliased] = [storagePlace, alias(storagePlace, 'inner_place')].map((table) =>
    columns(pick(table, 'id', 'parentId', 'name', 'kind', 'path')),
  )
  if (named === undefined || aliased === undefined) throw new Error('Two sets of columns were made')
  expect(drizzled.length).toBeGreaterThan(1)
  expect(select(sqlite, named, (list) => `SELECT ${list} FROM storage_place`).all()).toEqual(drizzled)
  const again = select(sqlite, aliased, (list) => `SELECT ${list} FROM storage_place AS inner_place`)
  expect(again.all()).toEqual(drizzled)
  expect(countOf(sqlite, 'FROM storage_place')).toBe(drizzled.length)
})

test('a column of a LEFT JOIN is null where there is no row', async () => {
  const { sqlite } = await withPlaces()
  const outer = alias(storagePlace, 'outer_place')
  const read = select(
    sqlite,
    columns({ name: storagePlace.name, within: orNull(outer.name) }),
    (list) => `SELECT ${list} FROM storage_place
     LEFT JOIN storage_place AS outer_place ON outer_place.id = storage_place.parent_id WHERE storage_place.path LIKE 'Loft%'`,
  )
  expect(read.all()).toEqual([
    { name: 'Loft', within: null },
    { name: 'Top', within: 'Loft' },
  ])
})

test('one value of each row is read as the column has it', async () => {
  const { sqlite, db } = await withPlaces()
  const ids = db.select({ id: crop.id }).from(crop).all()
  expect(selectValue(sqlite, crop.id, (id) => `SELECT ${id} FROM crop`).all()).toEqual(
    ids.map(({ id }) => id),
  )
  expect(
    selectValue(sqlite, labelSheet.retired, (it) => `SELECT ${it} FROM label_sheet`).get(),
  ).toBeUndefined()
})
