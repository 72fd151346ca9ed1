import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { getTableColumns, getTableName } from 'drizzle-orm'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { backUp } from '../../db/migrations/back-up.ts'
import { APPLICATION_ID, MIGRATIONS_FOLDER, newestVersion } from '../../db/migrations/file-format.ts'
import { createCollection, type OpenCollection, openCollection } from '../../db/migrations/open-file.ts'
import crops from '../../db/reference/crops.json' with { type: 'json' }
import { tables } from '../../db/schema/tables.ts'
import { NOW } from '../builders/temporary-collection.ts'

let folder: string
let file: string
let open: OpenCollection[] = []

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'drawer-open-'))
  file = join(folder, 'seeds.drawer')
  const made = await createCollection(file, {
    kind: 'own',
    libraryName: 'Quillhaven Seed Drawer',
    accessionPattern: 'HL-{####}',
    key: 'started-here',
    now: () => NOW,
    newId: () => '00000000-0000-4000-8000-000000000001',
  })
  made.close()
})
afterEach(() => {
  for (const collection of open) collection.close()
  open = []
  rmSync(folder, { recursive: true, force: true })
})

async function opened(access: 'read' | 'write' = 'write', migrationsFolder = MIGRATIONS_FOLDER) {
  const collection = await openCollection(file, { access, now: () => NOW, migrationsFolder })
  open.push(collection)
  return collection
}

describe('a file at rest', () => {
  it('is one file with our mark, strict tables and no cascade', async () => {
    expect(readdirSync(folder).filter((name) => !name.endsWith('.lock'))).toEqual(['seeds.drawer'])
    const { sqlite } = await opened()
    expect(sqlite.pragma('application_id', { simple: true })).toBe(APPLICATION_ID)
    const listed = sqlite.pragma('table_list') as { name: string; type: string; strict: number }[]
    const ours = listed.filter(
      ({ name, type }) => type === 'table' && !/^(sqlite_|__drizzle|accession_search)/.test(name),
    )
    expect(ours.filter((table) => table.strict === 0)).toEqual([])
    expect(ours.length).toBeGreaterThan(20)
    const sql = sqlite.prepare('SELECT group_concat(sql) FROM sqlite_schema').pluck().get() as string
    expect(sql).not.toMatch(/CASCADE/i)
  })

  it('has exactly the tables and columns that the code knows', async () => {
    const { sqlite } = await opened()
    for (const table of Object.values(tables)) {
      const inFile = (
        sqlite.pragma(`table_info(${getTableName(table)})`) as { name: string; notnull: number; pk: number }[]
      ).map(({ name, notnull, pk }) => `${name}${notnull === 1 || pk > 0 ? '' : '?'}`)
      const inCode = Object.values(getTableColumns(table)).map(
        (column) => `${column.name}${column.notNull || column.primary ? '' : '?'}`,
      )
      expect(inCode.toSorted(), getTableName(table)).toEqual(inFile.toSorted())
    }
  })
})

describe('opening', () => {
  it('lets one process write and others read', async () => {
    await opened()
    await expect(
      openCollection(file, { access: 'write', now: () => NOW, lockWaitMs: 50 }),
    ).rejects.toMatchObject({ problem: { code: 'collection-busy' } })
    const reader = await opened('read')
    expect(reader.sqlite.prepare('SELECT library_name FROM collection').pluck().get()).toBe(
      'Quillhaven Seed Drawer',
    )
    expect(() => reader.sqlite.exec("UPDATE collection SET library_name = 'x'")).toThrow(/readonly/)
  })

  it('refuses a file from the future and leaves it as it is', async () => {
    const raw = new Database(file)
    raw.pragma('user_version = 99')
    raw.close()
    const before = readFileSync(file)
    for (const access of ['write', 'read'] as const) {
      await expect(opened(access)).rejects.toMatchObject({ problem: { code: 'file-from-the-future' } })
    }
    expect(readFileSync(file).equals(before)).toBe(true)
  })

  it.each([
    ['an empty file', ''],
    ['a text', 'dear keeper, here is my list of seed '.repeat(40)],
  ])('refuses %s', async (_what, content) => {
    writeFileSync(file, content)
    await expect(opened()).rejects.toMatchObject({ problem: { code: 'not-a-collection' } })
    expect(readFileSync(file, 'utf8')).toBe(content)
  })

  it('refuses a database of another program', async () => {
    rmSync(file)
    const raw = new Database(file)
    raw.exec('CREATE TABLE t (x)')
    raw.close()
    await expect(opened()).rejects.toMatchObject({ problem: { code: 'not-a-collection' } })
  })

  it('says when there is no such file, and makes none', async () => {
    rmSync(file)
    await expect(opened()).rejects.toMatchObject({ problem: { code: 'not-found' } })
    expect(existsSync(file)).toBe(false)
  })

  it('will not start a collection over a file', async () => {
    const facts = {
      kind: 'own',
      libraryName: 'X',
      accessionPattern: 'X-{####}',
      key: 'another-start',
      now: () => NOW,
      newId: () => '',
    } as const
    await expect(createCollection(file, facts)).rejects.toMatchObject({ problem: { code: 'already-there' } })
  })
})

describe('migrating', () => {
  const NEWEST = newestVersion(MIGRATIONS_FOLDER)

  /** A copy of the migrations with one more that rebuilds `lot`, as a real one might. */
  function futureMigrations(sql: string): string {
    const copy = join(folder, 'migrations')
    cpSync(MIGRATIONS_FOLDER, copy, { recursive: true })
    const journal = JSON.parse(readFileSync(join(copy, 'meta', '_journal.json'), 'utf8'))
    journal.entries.push({
      idx: journal.entries.length,
      version: '6',
      when: 1_895_600_000_000,
      tag: '9999_next',
      breakpoints: true,
    })
    writeFileSync(join(copy, 'meta', '_journal.json'), JSON.stringify(journal))
    writeFileSync(join(copy, '9999_next.sql'), sql)
    return copy
  }

  it('backs up first, then migrates, and the backup is the file as it was', async () => {
    const next = futureMigrations('ALTER TABLE collection ADD COLUMN motto TEXT;')
    const { sqlite } = await opened('write', next)
    expect(sqlite.pragma('user_version', { simple: true })).toBe(NEWEST + 1)
    const [backup] = readdirSync(join(folder, 'Backups'))
    expect(backup).toMatch(new RegExp(`^seeds before version ${NEWEST + 1} .*\\.drawer$`))
    const copy = new Database(join(folder, 'Backups', backup ?? ''), { readonly: true })
    expect(copy.pragma('user_version', { simple: true })).toBe(NEWEST)
    expect(copy.prepare('SELECT count(*) FROM crop').pluck().get()).toBe(crops.length)
    copy.close()
  })

  it('is refused to a reader, who is told what to do', async () => {
    const next = futureMigrations('ALTER TABLE collection ADD COLUMN motto TEXT;')
    await expect(opened('read', next)).rejects.toMatchObject({ problem: { code: 'collection-read-only' } })
  })

  it('stops when rows are lost, and the old file is in the backup', async () => {
    const next = futureMigrations("DELETE FROM crop WHERE id = 'bean';")
    await expect(opened('write', next)).rejects.toThrow(
      `left ${crops.length - 1} of ${crops.length} rows of crop`,
    )
    expect(readdirSync(join(folder, 'Backups'))).toHaveLength(1)
  })

  it('leaves the file as it was when a migration fails half way', async () => {
    const next = futureMigrations(
      'DELETE FROM number_series;--> statement-breakpoint\nINSERT INTO nowhere VALUES (1);',
    )
    const before = readFileSync(file)
    await expect(opened('write', next)).rejects.toThrow()
    expect(readFileSync(file).equals(before)).toBe(true)
    const { sqlite } = await opened()
    expect(sqlite.pragma('user_version', { simple: true })).toBe(NEWEST)
  })
})

describe('backing up', () => {
  it('copies an open collection and checks the copy', async () => {
    const { sqlite } = await opened()
    const backup = await backUp(sqlite, file, 'kept', NOW)
    const copy = new Database(backup.file, { readonly: true })
    expect(copy.pragma('integrity_check', { simple: true })).toBe('ok')
    expect(copy.prepare('SELECT count(*) FROM crop').pluck().get()).toBe(crops.length)
    copy.close()
    expect(readdirSync(join(folder, 'Backups')).filter((name) => name.endsWith('.unfinished'))).toEqual([])
  })
})
