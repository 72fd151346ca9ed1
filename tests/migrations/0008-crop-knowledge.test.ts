import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { readCropTable } from '../../db/migrations/crop-table.ts'
import { MIGRATIONS_FOLDER } from '../../db/migrations/file-format.ts'

/** What 0008 adds, as a cell of the table and as a column, by the name that the row of the shipped table gives it. */
const ADDED = {
  pollination: 'pollination',
  lifeCycle: 'life_cycle',
  isolationHomeM: 'isolation_home_m',
  isolationStrictM: 'isolation_strict_m',
  bedArea: 'bed_area',
  daysToSeed: 'days_to_seed',
  laterSowingDays: 'later_sowing_days',
  countedUnit: 'counted_unit',
  seedExtraction: 'seed_extraction',
  viabilityConstants: 'viability_constants',
} as const
/** What a later version brings, and the cells that it changes: so it is run after. */
const OF_0014 = ['potato', 'shallot']
const NEW_CELLS = Object.values(ADDED).slice(4)
const before = readdirSync(MIGRATIONS_FOLDER)
  .filter((name) => /^000[0-7]_.*\.sql$/.test(name))
  .toSorted()

let file: Database.Database
beforeEach(() => {
  file = new Database(':memory:')
  file.pragma('foreign_keys = OFF')
  for (const name of before) file.exec(readFileSync(join(MIGRATIONS_FOLDER, name), 'utf8'))
  const insert = file.prepare(
    `INSERT INTO crop (id, common_name, name_folded, species, family, reference, own_reason, added_entry_id)
     VALUES (?, ?, ?, '', '', ?, '', ?)`,
  )
  for (const { id, reference } of readCropTable().filter(({ id: crop }) => !OF_0014.includes(crop))) {
    const { sources, ...cells } = JSON.parse(reference)
    for (const cell of NEW_CELLS) {
      delete cells[cell]
      delete sources[cell]
    }
    insert.run(id, id, id, JSON.stringify({ ...cells, sources }), null)
  }
  insert.run('own-3-1', 'Lantern vine', 'lantern vine', '{}', 3)
  for (const name of ['0008_crop_knowledge.sql', '0014_pieces.sql'])
    file.exec(readFileSync(join(MIGRATIONS_FOLDER, name), 'utf8'))
})
afterEach(() => file.close())

const cropOf = (id: string) =>
  file.prepare('SELECT * FROM crop WHERE id = ?').get(id) as Record<string, unknown>
const parsed = (text: unknown) => (text === null ? null : JSON.parse(String(text)))

it('0008 gives the crops of a file what a new file has of them, cell by cell with its source', () => {
  for (const row of readCropTable()) {
    const here = cropOf(row.id)
    expect(parsed(here['reference']), row.id).toEqual(JSON.parse(row.reference))
    for (const [name, column] of Object.entries(ADDED)) {
      const shipped = row[name as keyof typeof ADDED]
      const isJson = name === 'viabilityConstants'
      expect(isJson ? parsed(here[column]) : here[column], `${row.id} ${column}`).toEqual(
        isJson ? parsed(shipped) : shipped,
      )
    }
  }
})

it('0008 leaves a crop of the keeper’s own unknown, and counts its seeds', () => {
  const own = cropOf('own-3-1')
  expect(Object.values(ADDED).map((column) => own[column])).toEqual(
    Object.values(ADDED).map((column) => (column === 'counted_unit' ? 'seed' : null)),
  )
  expect(own['reference']).toBe('{}')
})

it.each([
  'bed_area = 0',
  'days_to_seed = 5',
  "counted_unit = 'pod'",
  "seed_extraction = 'boiled'",
  'isolation_home_m = -1',
])('a file refuses %s', (change) => {
  expect(() => file.exec(`UPDATE crop SET ${change}`)).toThrow(/CHECK/)
})
