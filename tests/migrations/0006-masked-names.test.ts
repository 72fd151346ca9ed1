import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, it } from 'vitest'
import { MIGRATIONS_FOLDER } from '../../db/migrations/file-format.ts'

it('0006 masks no name that the keeper did not choose', () => {
  const sqlite = new Database(':memory:')
  const run = (name: string) => sqlite.exec(readFileSync(join(MIGRATIONS_FOLDER, name), 'utf8'))
  run('0000_the_book.sql')
  const columns = sqlite.pragma('table_info(collection)') as {
    name: string
    type: string
    dflt_value: unknown
  }[]
  const filled = columns.filter(({ dflt_value }) => dflt_value === null)
  expect(filled.length).toBeGreaterThan(10)
  run('0006_masked_names.sql')
  const added = (sqlite.pragma('table_info(collection)') as typeof columns).slice(columns.length)
  expect(added).toMatchObject([{ name: 'masked_names', type: 'TEXT', dflt_value: "'[]'" }])
  sqlite.close()
})
