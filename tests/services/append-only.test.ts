import { afterAll, beforeAll, expect, it } from 'vitest'
import { aCollection, type TemporaryCollection, takeIn } from '../builders/temporary-collection.ts'

let test: TemporaryCollection

beforeAll(async () => {
  test = await aCollection()
  await takeIn(test, { amount: '100 g' })
})
afterAll(() => test.remove())

const columns = (table: string) =>
  test.collection.sqlite.prepare('SELECT name FROM pragma_table_info(?)').pluck().all(table) as string[]

/** The columns of a table that the file lets anybody write over. */
function editable(table: string): string[] {
  return columns(table).filter((column) => {
    try {
      test.collection.sqlite.exec(`UPDATE ${table} SET ${column} = ${column}`)
      return true
    } catch {
      return false
    }
  })
}

it('lets nobody write over a movement but its note, from which a name can be erased', () => {
  expect(columns('movement').length).toBeGreaterThan(10)
  expect(editable('movement')).toEqual(['note'])
  expect(() => test.collection.sqlite.exec('UPDATE movement SET count = count + 1')).toThrow('append-only')
})

it('lets nobody delete a movement', () => {
  expect(() => test.collection.sqlite.exec('DELETE FROM movement')).toThrow('append-only')
})

it('lets nobody change a printed number', () => {
  const fixed = (table: string) =>
    columns(table).filter((column) => column !== 'id' && !editable(table).includes(column))
  expect(fixed('accession')).toEqual(['number', 'bare', 'series', 'running'])
  expect(fixed('lot')).toEqual(expect.arrayContaining(['number', 'bare', 'ordinal', 'accession_id']))
})
