import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { beforeEach, describe, expect, test } from 'vitest'
import { readCropTable } from '../../db/migrations/crop-table.ts'
import { MIGRATIONS_FOLDER } from '../../db/migrations/file-format.ts'

const ADDED = ['brussels-sprouts', 'garlic', 'rocket', 'swede']
const sqlOf = (name: string) => {
  const file = readdirSync(MIGRATIONS_FOLDER).find((listed) => listed.endsWith(`_${name}.sql`)) ?? name
  return readFileSync(join(MIGRATIONS_FOLDER, file), 'utf8')
}

let file: Database.Database
beforeEach(() => {
  file = new Database(':memory:')
  file.exec(sqlOf('the_book'))
})

function insert(id: string, name: string): void {
  file
    .prepare(
      `INSERT INTO crop (id, common_name, name_folded, species, family, reference, own_reason) VALUES (?, ?, ?, '', '', '{}', '')`,
    )
    .run(id, name, name.toLowerCase())
}
const ids = () => file.prepare('SELECT id FROM crop ORDER BY id').pluck().all()

describe('crops that the first table had not', () => {
  test('come to a file that has a crop table, as a new file gets them', () => {
    insert('bean', 'Bean')
    file.exec(sqlOf('more_crops'))
    file.exec(sqlOf('crop_knowledge'))
    file.exec(sqlOf('pieces'))
    expect(ids()).toEqual(['bean', ...ADDED, 'potato', 'shallot'].toSorted())
    const shipped = readCropTable().filter(({ id }) => [...ADDED, 'potato', 'shallot'].includes(id))
    const kept = file.prepare('SELECT * FROM crop WHERE id <> ?').all('bean') as Record<string, unknown>[]
    for (const row of shipped) {
      const here = kept.find(({ id }) => id === row.id)
      for (const [name, value] of Object.entries({ ...row, reference: JSON.parse(row.reference) })) {
        const kept = here?.[name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)]
        expect(name === 'reference' ? JSON.parse(String(kept)) : kept, name).toEqual(value)
      }
    }
  })

  test('do not come where the keeper has a crop of that name, nor to a file that is still empty', () => {
    file.exec(sqlOf('more_crops'))
    expect(ids()).toEqual([])
    insert('own-3-1', 'Rutabaga')
    insert('own-4-1', 'Garlic')
    file.exec(sqlOf('more_crops'))
    expect(ids()).toEqual(['brussels-sprouts', 'own-3-1', 'own-4-1', 'rocket'])
  })
})
