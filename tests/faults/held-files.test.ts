import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, onTestFinished, test, vi } from 'vitest'
import type { Problem } from '../../db/contract/problem.ts'
import { backUp } from '../../db/migrations/back-up.ts'
import { copyOut, saveBackup } from '../../db/migrations/backup-files.ts'
import { moveFile, removeFile } from '../../db/migrations/held-files.ts'
import { CollectionHolder } from '../../electron/host/collection-holder.ts'
import { lastOpen } from '../../electron/host/collections-folder.ts'
import { logFile } from '../../electron/host/log.ts'
import { problemOf } from '../../electron/host/problem-of.ts'
import { realBackend } from '../../electron/host/real-backend.ts'
import { inEnglish } from '../builders/in-english.ts'
import { aCollection, NOW, takeIn } from '../builders/temporary-collection.ts'

/** Stands for a virus scanner: what it holds can be neither renamed nor removed, as Windows has it. */
const scanner = vi.hoisted(() => ({
  holds: (_path: string): boolean => false,
  code: 'EBUSY',
  refused: 0,
  synced: [] as string[],
  names: new Map<number, string>(),
  moved: [] as string[],
}))

const HELD_CODES = vi.hoisted(() => ['EBUSY', 'EPERM', 'EACCES'] as const)

vi.mock('node:fs', async (original) => {
  const fs = await original<typeof import('node:fs')>()
  const refuseHeld = (path: unknown) => {
    if (!fs.existsSync(String(path)) || !scanner.holds(String(path))) return
    const code = scanner.code === 'in turn' ? HELD_CODES[scanner.refused % 3] : scanner.code
    scanner.refused += 1
    throw Object.assign(new Error(`${code}: held`), { code })
  }
  return {
    ...fs,
    renameSync: (from: string, to: string) => {
      refuseHeld(from)
      refuseHeld(to)
      scanner.moved.push(`${from} ${scanner.synced.includes(from) ? 'synced' : 'not synced'}`)
      fs.renameSync(from, to)
    },
    rmSync: (path: string, options: object) => {
      refuseHeld(path)
      fs.rmSync(path, options)
    },
    openSync: (path: string, flags: string) => {
      const descriptor = fs.openSync(path, flags)
      scanner.names.set(descriptor, path)
      return descriptor
    },
    fsyncSync: (descriptor: number) => {
      scanner.synced.push(scanner.names.get(descriptor) ?? '')
      fs.fsyncSync(descriptor)
    },
  }
})

beforeEach(() => {
  scanner.refused = 0
  scanner.moved = []
  scanner.code = 'EBUSY'
})
afterEach(() => {
  scanner.holds = () => false
})

/** Holds every file that `which` names, each from its first use on, so many times. */
function holdEach(which: (name: string) => boolean, times: number): void {
  const held = new Map<string, number>()
  scanner.holds = (path) => {
    if (!which(basename(path))) return false
    const left = held.get(path) ?? times
    held.set(path, left - 1)
    return left > 0
  }
}

function aFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'drawer-held-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

async function aBook() {
  const book = await aCollection()
  onTestFinished(() => book.remove())
  await takeIn(book)
  return book
}

const unfinishedIn = (folder: string) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => /unfinished|making/.test(name))

describe('what another program holds for a moment', () => {
  test('costs nothing but that moment, whatever the system calls it', async () => {
    const book = await aBook()
    const folder = aFolder()
    // Making the template of a test's collection moves a file as well.
    scanner.moved = []
    scanner.code = 'in turn'
    holdEach(() => true, 2)
    const keeping = { secondFolder: folder, limitBytes: 1_000_000_000 }
    const { file } = book.collection
    const kept = await saveBackup(book.collection.sqlite, file, 'kept', NOW, keeping, () => {})
    expect(kept).toMatchObject({ secondTrouble: null })
    await copyOut(kept.file, join(folder, 'restored.drawer'))
    const holder = new CollectionHolder(folder, realBackend)
    const started = await holder.run('collection.create', { key: 'one-key', libraryName: 'Held' })
    expect(started).toMatchObject({ file: join(folder, 'Held.drawer') })
    expect(lastOpen(folder)).toBe(join(folder, 'Held.drawer'))
    await holder.close()
    expect(scanner.refused).toBeGreaterThan(8)
    expect([...unfinishedIn(book.folder), ...unfinishedIn(folder)]).toEqual([])
    expect(scanner.moved.filter((line) => line.endsWith(' not synced'))).toEqual([])
  })
})

describe('what another program holds on to', () => {
  test('is told as held, not as read-only, and nothing half-made is left once it lets go', () => {
    const folder = aFolder()
    const file = join(folder, 'a.drawer')
    writeFileSync(file, 'a')
    for (const code of HELD_CODES) {
      scanner.code = code
      scanner.holds = () => true
      for (const act of [() => moveFile(file, `${file}.b`, 20), () => removeFile(file, 20)]) {
        const problem = inEnglish<Problem>(problemOf(thrownBy(act)))
        expect(problem).toMatchObject({ code: 'collection-busy' })
        expect(problem.sentence).toMatch(/virus scanner.*is using a file/)
      }
    }
  })

  test('an old backup that cannot go does not fail the new one', async () => {
    const book = await aBook()
    const { sqlite, file } = book.collection
    const made = async (minutes: number) =>
      saveBackup(
        sqlite,
        file,
        'at start',
        new Date(NOW.getTime() + minutes * 60_000),
        { secondFolder: '', limitBytes: 1 },
        () => {},
      )
    for (const minutes of [0, 1, 2]) await made(minutes)
    scanner.holds = (path) => path.endsWith('.drawer')
    const { file: newest } = await made(3)
    expect(existsSync(newest)).toBe(true)
    expect(readdirSync(join(book.folder, 'Backups'))).toHaveLength(4)
    scanner.holds = () => false
    await made(4)
    expect(readdirSync(join(book.folder, 'Backups'))).toHaveLength(3)
  })

  test('what was open last can be remembered later: the collection that was started is open all the same', async () => {
    const folder = aFolder()
    const holder = new CollectionHolder(folder, realBackend)
    await holder.run('collection.create', { key: 'first-key', libraryName: 'First' })
    scanner.holds = (path) => path.endsWith('last-open.json')
    const second = await holder.run('collection.create', { key: 'second-key', libraryName: 'Second' })
    expect(inEnglish(second)).toMatchObject({ said: 'Started the collection ‘Second’' })
    expect(await holder.run('collection.get', {})).toMatchObject({ settings: { libraryName: 'Second' } })
    scanner.holds = () => false
    await holder.close()
    expect(lastOpen(folder)).toBe(join(folder, 'Second.drawer'))
  })

  test('a full log that cannot be set aside still gets its line', () => {
    const folder = aFolder()
    const file = join(folder, 'common-drawer.log')
    writeFileSync(file, 'x'.repeat(1_000_001))
    scanner.holds = (path) => path.endsWith('.log')
    logFile(folder, () => NOW)('lot.get TypeError')
    expect(readFileSync(file, 'utf8')).toMatch(/lot\.get TypeError\n$/)
  })
})

describe('a backup that is stopped', () => {
  test('leaves nothing unfinished', async () => {
    const book = await aBook()
    const stop = () => {
      throw new Error('stopped')
    }
    await expect(backUp(book.collection.sqlite, book.collection.file, 'kept', NOW, stop)).rejects.toThrow()
    expect(unfinishedIn(book.folder)).toEqual([])
  })
})

test('nothing else renames or removes a file', () => {
  const root = join(import.meta.dirname, '..', '..')
  const bare = ['db', 'electron', 'demo-data'].flatMap((part) =>
    readdirSync(join(root, part), { recursive: true, encoding: 'utf8' })
      .map((name) => join(part, name))
      .filter((name) => name.endsWith('.ts') && !name.endsWith('held-files.ts'))
      .filter((name) => /\b(rename|rm|unlink|rmdir)(Sync)?\(/.test(readFileSync(join(root, name), 'utf8'))),
  )
  expect(bare).toEqual([])
})

function thrownBy(act: () => void): unknown {
  try {
    act()
  } catch (thrown) {
    return thrown
  }
  return expect.fail('Nothing was thrown')
}
