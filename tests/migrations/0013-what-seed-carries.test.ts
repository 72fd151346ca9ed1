import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync } from 'node:zlib'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { contract } from '../../db/contract/contract.ts'
import { type OpenCollection, openCollection } from '../../db/migrations/open-file.ts'
import { firstChangedEntry } from '../../db/services/book/entry-chain.ts'
import { runOperation } from '../../db/services/run-operation.ts'

let folder: string
let opened: OpenCollection
const now = () => new Date('2026-03-15T10:00:00Z')

// Treated and toxic beans of which a part was split off (lot 2); five seeds went out with a day on which seed is due; what came
// back had pests (lot 3); and a pea of which nothing was said (lot 4): written by the version before.
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'drawer-migrated-'))
  const file = join(folder, 'old.drawer')
  const packed = readFileSync(join(import.meta.dirname, 'files', 'before-what-seed-carries.drawer.gz'))
  writeFileSync(file, gunzipSync(packed))
  opened = await openCollection(file, { access: 'write', now })
})
afterEach(() => {
  opened.close()
  rmSync(folder, { recursive: true, force: true })
})

it('puts the cautions of a gift on the lot that it came in as, and keeps those of a harvest', () => {
  const rows = opened.sqlite.prepare('SELECT lot_id, caution, on_date, note, entry_id FROM lot_caution')
  expect(rows.raw().all()).toEqual([
    [1, 'toxic', '2026-03-14', 'thiram', null],
    [1, 'treated', '2026-03-14', 'thiram', null],
    [3, 'pests-seen', '2026-03-14', 'weevils', null],
  ])
})

it('has each lot warn of what it warned of before', async () => {
  const cautionsOf = async (lotId: number) => {
    const input = contract['lot.get'].input.parse({ lotId })
    const { cautions } = await runOperation(opened, 'lot.get', input, now)
    return cautions.map(({ caution }) => caution).toSorted()
  }
  expect(await cautionsOf(1)).toEqual(['toxic', 'treated'])
  expect(await cautionsOf(2)).toEqual(['toxic', 'treated'])
  expect(await cautionsOf(3)).toEqual(['pests-seen', 'toxic'])
  expect(await cautionsOf(4)).toEqual([])
})

it('keeps due dates where promises have some, and leaves the chain whole', () => {
  const { sqlite } = opened
  expect(sqlite.prepare('SELECT due_dates, check_returns FROM collection').raw().get()).toEqual([
    1,
    'by-risk',
  ])
  expect(firstChangedEntry(sqlite)).toBeNull()
})
