import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, it } from 'vitest'
import { contract } from '../../db/contract/contract.ts'
import { MIGRATIONS_FOLDER } from '../../db/migrations/file-format.ts'
import { PROJECT_FOLDER } from '../support/command-line.ts'

const renamed: Readonly<Record<string, string>> = JSON.parse(
  readFileSync(join(PROJECT_FOLDER, 'docs', 'renamed-operations.json'), 'utf8'),
)

it('0007 calls what was written by an operation as it is called now, and leaves the rest', () => {
  const sqlite = new Database(':memory:')
  sqlite.exec('CREATE TABLE lot_forecast (reckoned_on TEXT); CREATE TABLE entry (operation TEXT)')
  const add = sqlite.prepare('INSERT INTO entry (operation) VALUES (?)')
  for (const old of [...Object.keys(renamed), 'intake.record']) add.run(old)
  sqlite.exec(readFileSync(join(MIGRATIONS_FOLDER, '0007_renamed.sql'), 'utf8'))
  const now = sqlite.prepare('SELECT operation FROM entry ORDER BY rowid').pluck().all()
  expect(now).toEqual([...Object.values(renamed), 'intake.record'])
  expect(sqlite.prepare('SELECT computed_on FROM lot_forecast').all()).toEqual([])
  sqlite.close()
})

it('every renamed operation is in the contract under its new name, and under its old name no more', () => {
  const names = Object.keys(contract)
  expect(Object.values(renamed).filter((name) => !names.includes(name))).toEqual([])
  expect(Object.keys(renamed).filter((name) => names.includes(name))).toEqual([])
})
