import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync } from 'node:zlib'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { contract } from '../../db/contract/contract.ts'
import { type OpenCollection, openCollection } from '../../db/migrations/open-file.ts'
import { firstChangedEntry } from '../../db/services/book/entry-chain.ts'
import { runOperation } from '../../db/services/run-operation.ts'
import { inEnglish } from '../builders/in-english.ts'

let folder: string
let opened: OpenCollection
const now = () => new Date('2026-03-15T10:00:00Z')

// A gift of two lots, one split and merged again, a visit with a promise, the promise waived and waited for again, and an
// unfinished return, written by the version before.
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'drawer-migrated-'))
  const file = join(folder, 'old.drawer')
  const packed = readFileSync(join(import.meta.dirname, 'files', 'before-entry-chain.drawer.gz'))
  writeFileSync(file, gunzipSync(packed))
  opened = await openCollection(file, { access: 'write', now })
})
afterEach(() => {
  opened.close()
  rmSync(folder, { recursive: true, force: true })
})

const ask = (name: 'entry.list' | 'collection.check' | 'lot.list' | 'draft.list') =>
  runOperation(opened, name, contract[name].input.parse({}) as never, now)

it('renames merged lots and unfinished returns, keeping every line of the ledger, balance and sentence', async () => {
  const { sqlite } = opened
  expect(sqlite.prepare('SELECT DISTINCT relation FROM lot_parent ORDER BY 1').pluck().all()).toEqual([
    'merged',
    'split',
  ])
  expect(sqlite.prepare('SELECT kind, sum(count) FROM movement GROUP BY kind').raw().all()).toEqual([
    ['intake', 800],
    ['merge', 0],
    ['split', 0],
    ['withdrawal', -10],
  ])
  expect(await ask('collection.check')).toMatchObject({ clean: true })
  expect(sqlite.prepare('SELECT kind FROM draft').pluck().all()).toEqual(['return'])
  const { entries } = inEnglish(await ask('entry.list')) as { entries: { said: string }[] }
  expect(entries.map(({ said }) => said)).toContain('Added Rosalind Ferrow')
  expect(entries).toHaveLength(8)
})

it('has the rebuilt ledger kept as it was: its balance follows, and no line of it is changed or deleted', () => {
  const { sqlite } = opened
  const balance = () => sqlite.prepare('SELECT balance_count FROM lot WHERE id = 1').pluck().get() as number
  const before = balance()
  sqlite.exec(`INSERT INTO movement (lot_id, entry_id, kind, on_date, count, mass_mg, measured, weight_ug, note)
    VALUES (1, 2, 'merge', '2026-03-15', 7, 0, 'carried', NULL, '')`)
  expect(balance()).toBe(before + 7)
  expect(sqlite.prepare('SELECT stale_since FROM lot_forecast WHERE lot_id = 1').pluck().get()).toBe(8)
  expect(() => sqlite.exec('UPDATE movement SET count = 1 WHERE id = 1')).toThrow('append-only')
  expect(() => sqlite.exec('DELETE FROM movement WHERE id = 1')).toThrow('append-only')
})

it('begins the chain with the next entry, and judges none of those before it', async () => {
  const { sqlite } = opened
  expect(firstChangedEntry(sqlite)).toBeNull()
  sqlite.exec("UPDATE entry SET said = 'other' WHERE id = 5")
  const input = contract['person.create'].input.parse({ key: 'after-it-01', name: 'Pell', roles: [] })
  const { entryId } = await runOperation(opened, 'person.create', input, now)
  expect(firstChangedEntry(sqlite)).toBeNull()
  sqlite.prepare("UPDATE entry SET operation = 'person.change' WHERE id = ?").run(entryId)
  expect(firstChangedEntry(sqlite)).toBe(entryId)
})
