import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, it } from 'vitest'
import { readCropTable } from '../../db/migrations/crop-table.ts'
import { MIGRATIONS_FOLDER } from '../../db/migrations/file-format.ts'

it('0002 keeps every line of season lists, asks for nine in ten, and puts the doubtful test days right', () => {
  const sqlite = new Database(':memory:')
  sqlite.pragma('foreign_keys = OFF')
  const run = (name: string) => sqlite.exec(readFileSync(join(MIGRATIONS_FOLDER, name), 'utf8'))
  run('0000_the_book.sql')
  run('0001_pooled_weights.sql')
  sqlite.exec(`INSERT INTO collection SELECT 1, hex(zeroblob(18)), 'own', 'Moor', 'M{#}', 3, 0.8, 0.85, 'all-seeds',
    'maintenance', '04-15', 'en', 'metric', 'a4', 'system', NULL, '', '', '', 100, ''`)
  sqlite.exec(
    "INSERT INTO season_list_line VALUES (1, 1, 7, 1, 'rescue', 0, 45, 1, 'last'), (1, 2, 8, 0, 'watch', 60, 45, 0.1, '')",
  )
  const lines = () => sqlite.prepare('SELECT * FROM season_list_line ORDER BY ordinal').all()
  const before = lines()
  const noneLeft = "UPDATE season_list_line SET state = 'none-left' WHERE ordinal = 1"
  expect(() => sqlite.exec(noneLeft)).toThrow(/CHECK/)
  const asWas = { germ_final_count_day: 17, notes: 'as it was', sources: { germination: null } }
  for (const [id, reference] of [
    ['chickpea', asWas],
    ['thyme', { ...asWas, germ_final_count_day: null }],
    ['bean', { ...asWas, germ_final_count_day: 8 }],
  ] as const)
    sqlite
      .prepare(`INSERT INTO crop (id, common_name, name_folded, species, family, reference, own_reason)
        VALUES (?, ?, ?, '', '', ?, '')`)
      .run(id, id, id, JSON.stringify(reference))
  run('0002_none_left.sql')
  expect(lines()).toEqual(before)
  sqlite.exec(noneLeft)
  expect(() => sqlite.exec("UPDATE season_list_line SET state = 'lost'")).toThrow(/CHECK/)
  expect(sqlite.prepare('SELECT assurance FROM collection').pluck().get()).toBe(0.9)
  expect(() => sqlite.exec('UPDATE collection SET assurance = 1')).toThrow(/CHECK/)
  const shipped = new Map(readCropTable().map(({ id, reference }) => [id, JSON.parse(reference)]))
  for (const id of ['chickpea', 'thyme', 'bean']) {
    const row = sqlite.prepare('SELECT reference FROM crop WHERE id = ?').pluck().get(id) as string
    const { germ_final_count_day, sources } = JSON.parse(row)
    expect(germ_final_count_day).toBe(shipped.get(id).germ_final_count_day)
    expect(sources.germ_final_count_day).toEqual(shipped.get(id).sources.germ_final_count_day)
  }
  sqlite.close()
})
