import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync } from 'node:zlib'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { readCropTable } from '../../db/migrations/crop-table.ts'
import { type OpenCollection, openCollection } from '../../db/migrations/open-file.ts'

let folder: string
let opened: OpenCollection
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'drawer-migrated-'))
  const file = join(folder, 'old.drawer')
  writeFileSync(
    file,
    gunzipSync(readFileSync(join(import.meta.dirname, 'files', 'before-what-seed-carries.drawer.gz'))),
  )
  opened = await openCollection(file, { access: 'write', now: () => new Date('2026-03-15T10:00:00Z') })
})
afterEach(() => {
  opened.close()
  rmSync(folder, { recursive: true, force: true })
})

it('0014 gives the crops of a file what a new file has of pieces, cell by cell with its source', () => {
  const rows = opened.sqlite.prepare('SELECT counted_unit, keeps_months, reference FROM crop WHERE id = ?')
  for (const { id, countedUnit, keepsMonths, reference } of readCropTable()) {
    const here = rows.get(id) as Record<string, unknown>
    expect([here['counted_unit'], here['keeps_months']], id).toEqual([countedUnit, keepsMonths])
    expect(JSON.parse(String(here['reference'])), id).toEqual(JSON.parse(reference))
  }
})

it.each(["counted_unit = 'pod'", 'counted_unit = NULL', 'keeps_months = 0', 'keeps_months = 25'])(
  'a file refuses %s',
  (change) => {
    expect(() => opened.sqlite.exec(`UPDATE crop SET ${change}`)).toThrow(/CHECK|NOT NULL/)
  },
)
