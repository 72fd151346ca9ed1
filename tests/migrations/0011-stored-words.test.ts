import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, it } from 'vitest'
import { MIGRATIONS_FOLDER } from '../../db/migrations/file-format.ts'

const sql = (name: string) => readFileSync(join(MIGRATIONS_FOLDER, name), 'utf8')
const words = (sqlite: Database.Database) =>
  sqlite.prepare("SELECT group_concat(sql, ' ') FROM sqlite_schema").pluck().get() as string

it('0011 calls undone entries, merged records and waived promises so in tables, triggers and indexes, and keeps their rows', () => {
  const sqlite = new Database(':memory:')
  sqlite.exec(sql('0000_the_book.sql'))
  sqlite.exec(`INSERT INTO entry (id, key, operation, input_digest, answer, said, recorded_at) VALUES (1, 'first-key', 'x', '', '', '', '');
    INSERT INTO entry (id, key, operation, input_digest, answer, said, recorded_at, takes_back_id) VALUES (2, 'other-key', 'x', '', '', '', '', 1)`)
  sqlite.exec(sql('0011_stored_words.sql'))
  expect(sqlite.prepare('SELECT undoes_id FROM entry WHERE id = 2').pluck().get()).toBe(1)
  expect(words(sqlite)).not.toMatch(
    /takes_back_id|joined_into_id|TABLE "?promise_let_go|TABLE "?variety_join/,
  )
  sqlite.close()
})
