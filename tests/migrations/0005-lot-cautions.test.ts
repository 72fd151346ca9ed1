import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, it } from 'vitest'
import { MIGRATIONS_FOLDER } from '../../db/migrations/file-format.ts'

it('0005 leaves the cautions of gifts as they are, and begins with none of lots', () => {
  const sqlite = new Database(':memory:')
  sqlite.pragma('foreign_keys = OFF')
  const run = (name: string) => sqlite.exec(readFileSync(join(MIGRATIONS_FOLDER, name), 'utf8'))
  run('0000_the_book.sql')
  sqlite.exec("INSERT INTO accession_caution VALUES (1, 'treated', 'thiram')")
  const before = sqlite.prepare('SELECT * FROM accession_caution').all()
  run('0005_lot_cautions.sql')
  expect(sqlite.prepare('SELECT * FROM accession_caution').all()).toEqual(before)
  expect(sqlite.prepare('SELECT * FROM lot_caution').all()).toEqual([])
  expect(() => sqlite.exec("INSERT INTO lot_caution VALUES (1, 'unknown', '')")).toThrow(/CHECK/)
  sqlite.close()
})
