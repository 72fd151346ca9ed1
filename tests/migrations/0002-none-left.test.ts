import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { MIGRATIONS_FOLDER } from '../../db/migrations/file-format.ts'
import { migrateFile } from '../../db/migrations/migrate-file.ts'
import { aCollection, NOW, type TemporaryCollection, takeIn } from '../builders/temporary-collection.ts'

const TAG = '0002_none_left'
/** What a season list leans on, children last. */
const TABLES = ['entry', 'crop', 'variety', 'accession', 'season_list', 'season_list_line']

let test: TemporaryCollection
let folder: string
beforeEach(async () => {
  test = await aCollection()
  folder = mkdtempSync(join(tmpdir(), 'drawer-step-'))
})
afterEach(() => {
  test.remove()
  rmSync(folder, { recursive: true })
})

/** The migrations up to the one under test, or those before it. */
function migrationsUpTo(entries: readonly { tag: string }[]): string {
  const copy = join(folder, String(entries.length))
  mkdirSync(join(copy, 'meta'), { recursive: true })
  for (const { tag } of entries) copyFileSync(join(MIGRATIONS_FOLDER, `${tag}.sql`), join(copy, `${tag}.sql`))
  writeFileSync(
    join(copy, 'meta', '_journal.json'),
    JSON.stringify({ version: '7', dialect: 'sqlite', entries }),
  )
  return copy
}

it('keeps every line of every season list, and takes a line of an accession with none left', async () => {
  for (const amount of ['6 seeds', '900 seeds']) await takeIn(test, { amount })
  await test.call('season-list.save', { chosen: [2], note: 'Both' })
  const { default: journal } = await import('../../db/migrations/meta/_journal.json', {
    with: { type: 'json' },
  })
  const at = journal.entries.findIndex(({ tag }) => tag === TAG)
  const file = join(folder, 'old.drawer')
  const old = new Database(file)
  await migrateFile(old, file, migrationsUpTo(journal.entries.slice(0, at)), NOW)
  old.exec(`ATTACH '${test.collection.file}' AS later`)
  for (const table of TABLES) {
    const columns = (old.pragma(`table_info(${table})`) as { name: string }[]).map(({ name }) => name)
    old.exec(`INSERT INTO main.${table} (${columns}) SELECT ${columns} FROM later.${table}`)
  }
  old.exec('DETACH later')
  const lines = () => old.prepare('SELECT * FROM season_list_line ORDER BY ordinal').all()
  const before = lines()
  expect(before).toHaveLength(2)
  const line = "UPDATE season_list_line SET state = 'none-left' WHERE ordinal = 1"
  expect(() => old.exec(line)).toThrow('CHECK')
  await migrateFile(old, file, migrationsUpTo(journal.entries.slice(0, at + 1)), NOW)
  expect(lines()).toEqual(before)
  old.exec(line)
  expect(() => old.exec("UPDATE season_list_line SET state = 'lost'")).toThrow('CHECK')
  old.close()
})
