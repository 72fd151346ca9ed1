import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, it } from 'vitest'
import { MIGRATIONS_FOLDER } from '../../db/migrations/file-format.ts'

it('0009 keeps every draft as it was, and lets in kinds that no migration names', () => {
  const sqlite = new Database(':memory:')
  const run = (name: string) => sqlite.exec(readFileSync(join(MIGRATIONS_FOLDER, name), 'utf8'))
  const add = (kind: string, text: string) =>
    sqlite.prepare('INSERT INTO draft VALUES (?, ?, ?, ?)').run(`of-${kind}`, kind, text, '2026-03-01')
  run('0000_the_book.sql')
  add('take-in', '{"form":1}')
  add('season', '{"form":1,"draft":{}}')
  expect(() => add('not-yet-known', '{}')).toThrow(/CHECK/)
  const before = sqlite.prepare('SELECT * FROM draft').all()
  run('0009_draft_kinds.sql')
  expect(sqlite.prepare('SELECT * FROM draft').all()).toEqual(before)
  add('not-yet-known', '{}')
  expect(() => add('empty', '')).toThrow(/CHECK/)
  expect(() => add('take-in', '{}')).toThrow(/UNIQUE/)
  sqlite.close()
})
