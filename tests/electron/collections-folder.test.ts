import { mkdirSync, mkdtempSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { backupStem } from '../../db/migrations/back-up.ts'
import {
  collectionsFolder,
  freeFile,
  lastOpen,
  rememberOpen,
  restoredFile,
} from '../../electron/host/collections-folder.ts'

let folder: string
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'drawer-host-'))
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

describe('the folder of collections', () => {
  test('is the one asked for, else the environment’s, else one in the home folder', () => {
    expect(collectionsFolder(folder, { COMMON_DRAWER_FOLDER: '/elsewhere' })).toBe(folder)
    expect(collectionsFolder(undefined, { COMMON_DRAWER_FOLDER: folder })).toBe(folder)
    expect(collectionsFolder(undefined, {})).toMatch(/Common Drawer$/)
  })

  test.each([
    ['Quillhaven Seed Drawer', 'Quillhaven Seed Drawer'],
    ['Żółw / łąka: 7?', 'Żółw łąka 7'],
    ['../..', 'My collection'],
    ['con', 'My collection'],
    ['con.2026', 'My collection'],
    ['\u0000\u001f', 'My collection'],
    ['ends with a dot.', 'ends with a dot'],
  ])('a library called %j gets the file %j', (library, name) => {
    expect(freeFile(folder, library)).toBe(join(folder, `${name}.drawer`))
  })

  test('a second library of one name gets a file of its own', () => {
    writeFileSync(join(folder, 'Two.drawer'), '')
    expect(freeFile(folder, 'Two')).toBe(join(folder, 'Two 2.drawer'))
  })

  test('remembers what was open, and forgets what is spoilt', async () => {
    expect(lastOpen(folder)).toBeNull()
    await rememberOpen(folder, join(folder, 'a.drawer'))
    expect(lastOpen(folder)).toBe(join(folder, 'a.drawer'))
    writeFileSync(join(folder, 'last-open.json'), '{"file":')
    expect(lastOpen(folder)).toBeNull()
  })

  test('remembers what lies in its folder when that was moved, and what lies elsewhere where it was', async () => {
    await rememberOpen(folder, join(folder, 'a.drawer'))
    const moved = join(folder, 'moved')
    mkdirSync(moved)
    renameSync(join(folder, 'last-open.json'), join(moved, 'last-open.json'))
    expect(lastOpen(moved)).toBe(join(moved, 'a.drawer'))
    const elsewhere = join(tmpdir(), 'elsewhere.drawer')
    await rememberOpen(folder, elsewhere)
    expect(lastOpen(folder)).toBe(elsewhere)
  })

  test('takes the collection that was written last where nothing is remembered, never the demonstration', () => {
    expect(lastOpen(join(folder, 'not there'))).toBeNull()
    for (const [name, second] of [
      ['old.drawer', 1],
      ['new.drawer', 2],
      ['Demo collection.drawer', 3],
      ['.new.drawer.lock', 4],
      ['._new.drawer', 5],
    ] as const) {
      writeFileSync(join(folder, name), '')
      utimesSync(join(folder, name), second, second)
    }
    mkdirSync(join(folder, 'a folder.drawer'))
    expect(lastOpen(folder)).toBe(join(folder, 'new.drawer'))
  })

  test('every file of a library has a name that systems take, whatever the library is called', () => {
    const letter = fc.constantFrom('a', 'é', 'क', '種', '👩‍🌾', 'x\u0301', '.', ' ', 'ไ')
    fc.assert(
      fc.property(fc.array(letter, { maxLength: 200 }), (letters) => {
        const name = letters.join('').normalize('NFC')
        const first = freeFile(folder, name)
        const restored = restoredFile(first, new Date('2026-03-14T10:30:00Z'))
        expect(restored).toMatch(/ restored 2026-03-14\.drawer$/)
        for (const file of [first, restored, join(folder, `${'種'.repeat(80)}.drawer`)]) {
          const stem = backupStem(file)
          const backup = `${stem} before version 12 2026-03-14T10-30-00-000Z.drawer.unfinished-journal`
          expect(Buffer.byteLength(backup)).toBeLessThanOrEqual(255)
        }
        const own = basename(first, '.drawer')
        expect(Buffer.byteLength(own)).toBeLessThanOrEqual(120)
        const whole = [...new Intl.Segmenter().segment(name.replace(/^[. ]+/, '').replace(/\s+/g, ' '))]
        const kept = [...new Intl.Segmenter().segment(own)]
        if (own !== 'My collection')
          expect(kept.map(({ segment }) => segment)).toEqual(
            whole.slice(0, kept.length).map(({ segment }) => segment),
          )
      }),
      { numRuns: process.env['LONG_TESTS'] === 'yes' ? 2_000 : 60 },
    )
  })
})
