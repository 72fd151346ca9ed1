import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, it } from 'vitest'
import { MIGRATIONS_FOLDER } from '../../db/migrations/file-format.ts'

it('0004 keeps every story as it is and takes none of it for words of the donor', () => {
  const sqlite = new Database(':memory:')
  sqlite.pragma('foreign_keys = OFF')
  const run = (name: string) => sqlite.exec(readFileSync(join(MIGRATIONS_FOLDER, name), 'utf8'))
  run('0000_the_book.sql')
  sqlite.exec(
    `INSERT INTO accession (id, number, bare, series, running, variety_id, received_on, grown_at, story, terms, entry_id)
     VALUES (1, 'M-1', 'M1', 'M-', 1, 1, '2026-03-14', '', 'weak, from a shop', '', 1)`,
  )
  run('0004_donor_words.sql')
  expect(sqlite.prepare('SELECT story, donor_words FROM accession').get()).toEqual({
    story: 'weak, from a shop',
    donor_words: '',
  })
  sqlite.close()
})
