import { spawn, spawnSync } from 'node:child_process'
import {
  chmodSync,
  chownSync,
  copyFileSync,
  linkSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import { openSound } from '../../db/migrations/backup-files.ts'
import { openCollection } from '../../db/migrations/open-file.ts'
import { runOperation } from '../../db/services/run-operation.ts'
import { CollectionHolder } from '../../electron/host/collection-holder.ts'
import { problemOf } from '../../electron/host/problem-of.ts'
import { realBackend } from '../../electron/host/real-backend.ts'
import { inEnglish } from '../builders/in-english.ts'
import { aCollection, NOW, type TemporaryCollection, takeIn } from '../builders/temporary-collection.ts'

const support = (name: string) => join(import.meta.dirname, 'support', name)

async function aBook(): Promise<TemporaryCollection> {
  const test = await aCollection()
  onTestFinished(() => test.remove())
  return test
}

/** What a keeper is told of something that fails. */
async function problemFrom(work: () => Promise<unknown>) {
  try {
    await work()
  } catch (thrown) {
    return inEnglish(problemOf(thrown))
  }
  return expect.fail('Nothing went wrong')
}

const addPerson = (book: TemporaryCollection, key: string) =>
  book.call('person.create', { key, name: 'Ilka Brandt', note: 'long '.repeat(4_000) })

async function expectUnchanged(book: TemporaryCollection, people: number): Promise<void> {
  expect(await book.call('collection.check', {})).toMatchObject({ findings: [] })
  expect((await book.call('person.list', {})).total).toBe(people)
}

/** Works as somebody without a right to everything: for root no file is read-only. */
async function asNobody<T>(folder: string, work: () => Promise<T>): Promise<T> {
  if (process.seteuid === undefined || process.geteuid?.() !== 0) return work()
  chownSync(folder, 65_534, 65_534)
  process.seteuid(65_534)
  try {
    return await work()
  } finally {
    process.seteuid(0)
  }
}

describe('a full disk', () => {
  test('writes nothing, and the same request goes through once there is room', async () => {
    const book = await aBook()
    const { sqlite } = book.collection
    const pages = Number(sqlite.pragma('page_count', { simple: true }))
    sqlite.pragma(`max_page_count = ${pages}`)
    const problem = await problemFrom(() => addPerson(book, 'one-intention'))
    expect(problem).toMatchObject({ code: 'disk-full', todo: 'Make room on the disk, then try again.' })
    await expectUnchanged(book, 0)
    sqlite.pragma('max_page_count = 1000000')
    await addPerson(book, 'one-intention')
    await expectUnchanged(book, 1)
  })

  // A disk of its own is given where the system lets an unprivileged user have one.
  const apart = ['-Urm', 'sh', '-c']
  const maySetApart =
    process.platform === 'linux' &&
    spawnSync('unshare', [...apart, 'mount -t tmpfs -o size=1m none /mnt']).status === 0
  test.skipIf(!maySetApart)(
    'that is a real one of four megabytes loses nothing either',
    { tags: 'long' },
    () => {
      const folder = mkdtempSync(join(tmpdir(), 'drawer-small-disk-'))
      onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
      const script = 'mount -t tmpfs -o size=4m none "$1" && exec "$0" "$2" "$1"'
      const args = [...apart, script, process.execPath, folder, support('fill-the-disk.ts')]
      const { stdout, stderr } = spawnSync('unshare', args, { encoding: 'utf8' })
      const said = JSON.parse(stdout || `"${stderr}"`)
      expect(said).toMatchObject({ problem: { code: 'disk-full' }, again: true })
      expect(said.written).toBeGreaterThan(0)
      const book = (people: number) => [
        { ok: true, value: { clean: true } },
        { ok: true, value: { people } },
      ]
      expect(said.whenFull).toMatchObject(book(said.written))
      expect(said.whenFree).toMatchObject(book(said.written + 1))
    },
  )
})

describe('a file that may only be read', () => {
  test.skipIf(process.platform === 'win32')(
    'is refused for writing with what to do, and left as it is',
    async () => {
      const book = await aBook()
      const { file } = book.collection
      book.collection.close()
      const before = readFileSync(file)
      const place = { key: 'one-intention', name: 'Jar', kind: 'jar', parentId: null } as const
      chmodSync(file, 0o444)
      const problem = await asNobody(book.folder, () =>
        problemFrom(async () => {
          const opened = await openCollection(file, { access: 'write', now: () => NOW })
          try {
            await runOperation(opened, 'place.create', place, () => NOW)
          } finally {
            opened.close()
          }
        }),
      )
      expect(problem).toMatchObject({ code: 'collection-read-only' })
      expect(problem.todo).toContain('remove the write protection')
      expect(readFileSync(file).equals(before)).toBe(true)
    },
  )
})

describe('a folder in which nothing may be written', () => {
  test.skipIf(process.platform === 'win32')('is opened for reading, and says so', async () => {
    const book = await aBook()
    const { file } = book.collection
    book.collection.close()
    rmSync(join(book.folder, '.test.drawer.lock'))
    const about = await asNobody(book.folder, async () => {
      chmodSync(book.folder, 0o555)
      const holder = new CollectionHolder(book.folder, realBackend)
      try {
        expect(await holder.openFirst(file)).toBeNull()
        expect(await holder.run('place.list', {})).toMatchObject({ places: [] })
        const place = { key: 'one-intention', name: 'Jar', kind: 'jar', parentId: null } as const
        const refused = await problemFrom(() => holder.run('place.create', place))
        expect(refused.code).toBe('collection-read-only')
        return inEnglish(await holder.run('collection.get', {}))
      } finally {
        await holder.close()
        chmodSync(book.folder, 0o755)
      }
    })
    expect((about as { warnings: string[] }).warnings[0]).toMatch(/cannot be changed where it is/)
  })
})

test('a flipped byte of the header is damage where there are backups, and a file called Backups is named', async () => {
  const book = await aBook()
  await takeIn(book)
  const { file } = book.collection
  const backups = join(book.folder, 'Backups')
  writeFileSync(backups, '')
  expect((await problemFrom(() => book.call('backup.create', {}))).sentence).toContain('There is a file at')
  rmSync(backups)
  await book.call('backup.create', {})
  book.collection.close()
  for (const at of [3, 70]) {
    const bytes = readFileSync(file)
    writeFileSync(file, bytes.with(at, (bytes[at] ?? 0) ^ 1))
    const problem = await problemFrom(() => openCollection(file, { access: 'write', now: () => NOW }))
    expect(problem).toMatchObject({ code: 'file-damaged' })
    writeFileSync(file, bytes)
  }
})

describe('a folder that is taken away while the collection is open', () => {
  test('is told at the next write; put back, it holds everything and goes on', async () => {
    const book = await aBook()
    await addPerson(book, 'before-it-went')
    const away = `${book.folder}-away`
    renameSync(book.folder, away)
    onTestFinished(() => rmSync(away, { recursive: true, force: true }))
    const problem = await problemFrom(() => addPerson(book, 'while-it-is-away'))
    expect(problem.code).toBe('file-moved')
    expect(problem.todo).toContain('disk')
    renameSync(away, book.folder)
    await addPerson(book, 'while-it-is-away')
    await expectUnchanged(book, 2)
  })
})

describe('a file that is changed behind the back of the open book', () => {
  const saved = async (book: TemporaryCollection) => {
    const { file } = await book.call('backup.create', {})
    const copy = openSound(file)
    onTestFinished(() => void copy.close())
    return { file, people: copy.prepare('SELECT count(*) FROM person').pluck().get() }
  }

  test('moved, deleted or another in its place: the whole book is saved from what is open', async () => {
    const book = await aBook()
    const { file } = book.collection
    await addPerson(book, 'before-it-went')
    copyFileSync(file, `${file}.other`)
    await addPerson(book, 'and-one-more')
    renameSync(file, `${file}.moved`)
    expect((await problemFrom(() => addPerson(book, 'while-it-is-away'))).code).toBe('file-moved')
    expect((await saved(book)).people).toBe(2)
    renameSync(`${file}.other`, file)
    expect((await saved(book)).people).toBe(2)
    rmSync(file)
    const { people, file: copy } = await saved(book)
    expect([people, dirname(copy)]).toEqual([2, join(book.folder, 'Backups')])
  })

  test('written over in place: it is noticed, and nothing is read or written as if it were the book', async () => {
    const book = await aBook()
    const { file } = book.collection
    const earlier = readFileSync(file)
    await addPerson(book, 'before-it-went')
    writeFileSync(file, earlier)
    for (const work of [() => addPerson(book, 'and-one-more'), () => book.call('person.list', {})])
      expect((await problemFrom(work)).sentence).toContain('wrote over the file')
    expect(readFileSync(file).equals(earlier)).toBe(true)
  })

  test('a link does not lead round the lock', async () => {
    const book = await aBook()
    const { file } = book.collection
    const other = mkdtempSync(join(tmpdir(), 'drawer-link-'))
    onTestFinished(() => rmSync(other, { recursive: true, force: true }))
    const openLink = (name: string) => openCollection(join(other, name), { access: 'write', now: () => NOW })
    book.collection.close()
    symlinkSync(file, join(other, 'symbolic.drawer'))
    const opened = await openLink('symbolic.drawer')
    opened.close()
    expect(readdirSync(other), 'the lock lies beside the file itself').toEqual(['symbolic.drawer'])
    linkSync(file, join(other, 'hard.drawer'))
    expect((await problemFrom(() => openLink('hard.drawer'))).sentence).toContain('second name')
  })
})

describe('another program that holds the file', () => {
  async function holding(file: string): Promise<() => Promise<unknown>> {
    const child = spawn(process.execPath, [support('hold-the-file.ts'), file])
    const ended = new Promise((resolve) => child.once('exit', resolve))
    const discard = () => {
      child.stdin.end()
      return ended
    }
    onTestFinished(async () => void (await discard()))
    await new Promise((resolve) => child.stdout.once('data', resolve))
    return discard
  }

  test('makes a write wait, then refuses it; once it lets go the same request goes through', {
    tags: 'long',
  }, async () => {
    const book = await aBook()
    const discard = await holding(book.collection.file)
    expect(await problemFrom(() => addPerson(book, 'one-intention'))).toMatchObject({
      code: 'collection-busy',
    })
    await discard()
    await addPerson(book, 'one-intention')
    await expectUnchanged(book, 1)
  })
})

describe('the app started twice on one collection', () => {
  test('works in the first, and the second says so and starts once the first has ended', {
    tags: 'long',
  }, async () => {
    const book = await aBook()
    const { file } = book.collection
    const second = new CollectionHolder(book.folder, realBackend)
    expect(inEnglish(await second.openFirst(file))).toMatchObject({
      code: 'collection-busy',
      todo: 'Work in that window, or close it and try again. Nothing was changed.',
    })
    const place = { name: 'Jar', kind: 'jar', parentId: null } as const
    await expect(second.run('place.create', { key: 'by-the-second', ...place })).rejects.toMatchObject({
      problem: { code: 'collection-busy' },
    })
    await book.call('place.create', { key: 'by-the-first', ...place })
    book.collection.close()
    expect(await second.run('collection.get', {})).toMatchObject({ file })
    expect(await second.run('place.list', {})).toMatchObject({ places: [{ name: 'Jar' }] })
    await second.close()
  })
})

describe('trying again after a refused opening', () => {
  const REASONS: readonly [why: string, code: string, spoil: (file: string) => () => void][] = [
    [
      'the file is back',
      'not-found',
      (file) => {
        renameSync(file, `${file}.away`)
        return () => renameSync(`${file}.away`, file)
      },
    ],
    [
      'its folder is back',
      'not-found',
      (file) => {
        renameSync(dirname(file), `${dirname(file)}-away`)
        return () => renameSync(`${dirname(file)}-away`, dirname(file))
      },
    ],
    [
      'a whole file is in its place',
      'file-damaged',
      (file) => {
        const whole = readFileSync(file)
        writeFileSync(file, Buffer.from(whole).fill(7, 4_096, 60_000))
        return () => writeFileSync(file, whole)
      },
    ],
  ]
  test.each(REASONS)('opens the collection once %s', async (_why, code, spoil) => {
    const book = await aBook()
    const { file } = book.collection
    book.collection.close()
    const mend = spoil(file)
    const holder = new CollectionHolder(book.folder, realBackend)
    expect(await holder.openFirst(file)).toMatchObject({ code })
    await expect(holder.run('place.list', {})).rejects.toMatchObject({ problem: { code } })
    mend()
    expect(await holder.run('collection.get', {})).toMatchObject({ file })
    expect(await holder.run('place.list', {})).toMatchObject({ places: [] })
    await holder.close()
  })
})

describe('a clock that goes back', () => {
  const YEARS_AGO = new Date(2019, 5, 1, 12)

  test('is told, and what is written then stands after what was there', async () => {
    const book = await aBook()
    const { entryId } = await takeIn(book)
    expect((await book.call('collection.get', {})).warnings).toEqual([])
    const back = <N extends 'collection.get' | 'entry.list'>(name: N) =>
      runOperation(book.collection, name, { limit: 50 } as never, () => YEARS_AGO)
    expect(inEnglish((await back('collection.get')).warnings)).toEqual([
      'This computer’s clock says 1 Jun 2019, but the book was last changed on 14 Mar 2026. Set the clock right before you go on; nothing in the book is lost.',
    ])
    const place = { key: 'while-it-is-wrong', name: 'Jar', kind: 'jar', parentId: null } as const
    const put = (more: object) =>
      runOperation(book.collection, 'place.create', { ...place, ...more }, () => YEARS_AGO)
    expect(await problemFrom(() => put({}))).toMatchObject({ asks: 'today 2019-06-01' })
    await put({ itIsSo: ['today 2019-06-01'] })
    const [latest, before] = (await back('entry.list')).entries
    expect(latest).toMatchObject({ operation: 'place.create' })
    expect(before).toMatchObject({ entryId })
    expect(await book.call('collection.check', {})).toMatchObject({ findings: [] })
    expect((await back('collection.get')).warnings).toHaveLength(1)
  })
})
