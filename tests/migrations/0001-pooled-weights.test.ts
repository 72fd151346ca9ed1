import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, it } from 'vitest'
import { MIGRATIONS_FOLDER } from '../../db/migrations/file-format.ts'

it('0001 leaves the weights that were measured as they are, told by their samples', () => {
  const sqlite = new Database(':memory:')
  sqlite.pragma('foreign_keys = OFF')
  const run = (name: string) => sqlite.exec(readFileSync(join(MIGRATIONS_FOLDER, name), 'utf8'))
  run('0000_the_book.sql')
  sqlite.exec("INSERT INTO seed_weight VALUES (1, 1, '2026-03-14', 24400000, 2, 200, 1.5, 0, '', 1)")
  const before = sqlite.prepare('SELECT * FROM seed_weight').all()
  run('0001_pooled_weights.sql')
  expect(sqlite.prepare('SELECT * FROM seed_weight').all()).toEqual(
    before.map((row) => ({ ...(row as object), pooled_doubt: null })),
  )
  expect(() => sqlite.exec('UPDATE seed_weight SET pooled_doubt = 1.1')).toThrow(/CHECK/)
  sqlite.close()
})
