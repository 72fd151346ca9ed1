import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { saveBackup } from '../../db/migrations/backup-files.ts'
import { readingOf } from '../../db/services/book/context.ts'
import { backUpIfWritten } from '../../db/services/collection/backups.ts'
import { CollectionHolder } from '../../electron/host/collection-holder.ts'
import { realBackend } from '../../electron/host/real-backend.ts'
import { inEnglish } from '../builders/in-english.ts'
import { aCollection, aGift, NOW, TODAY, takeIn } from '../builders/temporary-collection.ts'
import { counted } from '../support/counted.ts'

async function aBook() {
  const book = await aCollection()
  onTestFinished(() => book.remove())
  return book
}

function aFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'drawer-second-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** A host on a file, as the app has it. */
async function hostOn(folder: string, file: string) {
  const holder = new CollectionHolder(folder, realBackend)
  onTestFinished(() => holder.close())
  return { holder, problem: await holder.openFirst(file) }
}

test('a backup is made by itself where something was written, and not twice of the same', async () => {
  const book = await aBook()
  const byItself = () => backUpIfWritten(readingOf(book.collection, new Date()), 'at start')
  expect(await byItself(), 'nothing is in the book yet').toBeNull()
  await takeIn(book)
  expect(await byItself()).toMatchObject({ second: null, secondTrouble: null })
  expect(await byItself()).toBeNull()
  await takeIn(book)
  expect(await byItself()).not.toBeNull()
  expect(readdirSync(join(book.folder, 'Backups'))).toHaveLength(2)
})

test('a damaged backup counts as none', async () => {
  const book = await aBook()
  await takeIn(book)
  const first = await backUpIfWritten(readingOf(book.collection, NOW), 'at start')
  writeFileSync(first?.file ?? '', readFileSync(first?.file ?? '').fill(7, 4_096, 20_000))
  expect(await backUpIfWritten(readingOf(book.collection, new Date()), 'at start')).not.toBeNull()
})

test('a file of readings is read in after a backup', async () => {
  const book = await aBook()
  await takeIn(book)
  const { placeId } = await book.call('place.create', { name: 'Back room', kind: 'room' })
  const text = 'Time,Temperature C,Humidity\n2026-03-01 08:00,18.5,42\n'
  await book.call('reading.import-file', { placeId, fileName: 'a.csv', text })
  expect(readdirSync(join(book.folder, 'Backups'))).toEqual([expect.stringMatching(/^test before import /)])
})

test('a second folder gets a checked copy of each; where it is away, that is said and the first is made', async () => {
  const book = await aBook()
  const folder = join(aFolder(), 'stick')
  expect(await book.refused('backup.change-rule', { secondFolder: folder })).toMatchObject({
    code: 'not-found',
    field: 'secondFolder',
  })
  expect(await book.refused('backup.change-rule', { secondFolder: 'stick' })).toMatchObject({
    sentence: 'Type the full path of the folder, starting with its disk.',
  })
  expect(await book.refused('backup.change-rule', { secondFolder: book.folder })).toMatchObject({
    sentence: 'The collection or its backups are in that folder already.',
  })
  mkdirSync(folder)
  await book.call('backup.change-rule', { secondFolder: folder })
  const both = await book.call('backup.create', {})
  expect(both.second).toBe(join(folder, readdirSync(folder)[0] ?? ''))
  expect(readFileSync(both.second ?? '').equals(readFileSync(both.file))).toBe(true)
  rmSync(folder, { recursive: true })
  const later = new Date(NOW.getTime() + 60_000)
  await takeIn(book)
  expect(inEnglish(await backUpIfWritten(readingOf(book.collection, later), 'at start'))).toMatchObject({
    second: null,
    secondTrouble: `${folder} is not there just now. Connect its disk and back up again.`,
  })
  expect(existsSync(folder), 'no folder is made where a stick should be').toBe(false)
})

test('old backups go by the rule within the size, in both folders', async () => {
  const book = await aBook()
  const folder = aFolder()
  const { sqlite, file } = book.collection
  const { bytes } = await book.call('backup.create', {})
  const keeping = { secondFolder: folder, limitBytes: 4.5 * bytes }
  for (let day = 0; day < 6; day += 1) {
    const at = new Date(NOW.getTime() + day * 40 * 86_400_000)
    await saveBackup(sqlite, file, 'at start', at, keeping, () => {})
  }
  for (const where of [join(book.folder, 'Backups'), folder]) expect(readdirSync(where)).toHaveLength(4)
})

test('a comparison says what the backup lacks and what it has', async () => {
  const book = await aBook()
  const { lotId } = await takeIn(book)
  const { file } = await book.call('backup.create', {})
  expect(await book.call('backup.compare', { file })).toMatchObject({
    sameLibrary: true,
    onlyOpen: { count: 0 },
    onlyBackup: { count: 0 },
    lots: [],
  })
  await book.call('lot.discard', { lotId, on: TODAY, amount: '40 g', reason: 'mould' })
  const compared = await book.call('backup.compare', { file })
  expect(compared).toMatchObject({ onlyOpen: { count: 1 }, onlyBackup: { count: 0 }, lotsDiffering: 1 })
  expect(compared.onlyOpen.latest[0]?.said).toMatch(/away/)
  expect(compared.lots[0]?.open).toContain('60 g')
  expect(compared.lots[0]?.backup).toContain('100 g')
  expect(compared.counts).toContainEqual({ what: 'lines in the book', open: 2, backup: 1 })
})

test('what is no whole backup is neither compared nor restored', async () => {
  const book = await aBook()
  const { file } = await book.call('backup.create', {})
  const letter = join(book.folder, 'letter.txt')
  writeFileSync(letter, 'Dear keeper, '.repeat(900))
  const half = join(book.folder, 'half.drawer')
  writeFileSync(half, readFileSync(file).subarray(0, 60_000))
  for (const bad of [letter, half]) {
    expect(await book.refused('backup.compare', { file: bad })).toMatchObject({
      code: 'file-damaged',
      field: 'file',
    })
  }
  const before = readdirSync(book.folder)
  book.collection.close()
  const { holder } = await hostOn(book.folder, book.collection.file)
  for (const bad of [letter, half, join(book.folder, 'none.drawer')]) {
    await expect(holder.run('backup.restore', { key: 'one-intention', file: bad })).rejects.toMatchObject({
      problem: { field: 'file' },
    })
  }
  expect(readdirSync(book.folder).filter((name) => !before.includes(name))).toEqual(['last-open.json'])
})

test('the drill: the file is spoilt, that is noticed at opening, the last whole backup is offered, restored, and right', async () => {
  const book = await aBook()
  const { lotId } = await takeIn(book)
  const good = await book.call('backup.create', {})
  const expected = await book.call('lot.get', { lotId })
  await book.call('intake.record', { donor: null, receivedOn: TODAY, gifts: [aGift()] })
  await new Promise((resolve) => setTimeout(resolve, 5))
  const bad = await backUpIfWritten(readingOf(book.collection, new Date()), 'at start')
  const { file } = book.collection
  book.collection.close()
  for (const spoilt of [file, bad?.file ?? '']) {
    writeFileSync(spoilt, readFileSync(spoilt).fill(7, 4_096, 60_000))
  }
  const damaged = readFileSync(file)

  const { holder, problem } = await hostOn(book.folder, file)
  expect(problem).toMatchObject({ code: 'file-damaged' })
  const list = await holder.run('backup.list', {})
  expect(list).toMatchObject({
    lastGood: good.file,
    limitMb: null,
    // What cannot be read holds nothing to restore, and stands last.
    backups: [{ file: good.file }, { file: bad?.file }],
  })
  const asked = { key: 'restore-the-last', file: good.file }
  const restored = await holder.run('backup.restore', asked)
  expect(restored).toMatchObject({ file: expect.stringMatching(/test restored \d{4}-\d\d-\d\d\.drawer$/) })
  expect(await holder.run('backup.restore', asked), 'asked twice it restores once').toEqual(restored)
  expect(readFileSync(file).equals(damaged), 'the damaged file is kept').toBe(true)
  expect(await holder.run('collection.check', {})).toMatchObject({ clean: true })
  expect(inEnglish(await holder.run('lot.get', { lotId }))).toEqual(expected)
  const { entries } = inEnglish(await holder.run('entry.list', { limit: 1 })) as {
    entries: { said: string }[]
  }
  expect(entries[0]?.said).toMatch(/^Restored from a backup/)
  await holder.run('place.create', { key: 'after-restoring', name: 'Jar', kind: 'jar', parentId: null })
  await holder.close()
  const { problem: next } = await hostOn(book.folder, (restored as { file: string }).file)
  expect(next, 'it opens the next time').toBeNull()
  counted('restore drills, the restored book checked', 1)
})

test('the last whole backup is the one that holds most, though a clock was wrong when another was made', async () => {
  const book = await aBook()
  await takeIn(book)
  const early = await backUpIfWritten(readingOf(book.collection, new Date('2071-05-01')), 'at start')
  await takeIn(book)
  const late = await backUpIfWritten(readingOf(book.collection, NOW), 'at start')
  const { file } = book.collection
  book.collection.close()
  writeFileSync(file, readFileSync(file).fill(7, 4_096, 60_000))
  const { holder } = await hostOn(book.folder, file)
  expect(await holder.run('backup.list', {})).toMatchObject({
    lastGood: late?.file,
    backups: [{ file: late?.file }, { file: early?.file }],
  })
})

test('a backup that lies elsewhere is restored beside the open file, which stays as it is', async () => {
  const book = await aBook()
  const { file: backup } = await book.call('backup.create', {})
  const elsewhere = join(aFolder(), 'from a stick.drawer')
  copyFileSync(backup, elsewhere)
  await takeIn(book)
  const { file } = book.collection
  book.collection.close()
  const before = readFileSync(file)
  const { holder } = await hostOn(book.folder, file)
  await holder.run('backup.restore', { key: 'from-the-stick', file: elsewhere })
  expect(await holder.run('collection.get', {})).toMatchObject({ accessions: 0 })
  expect(readFileSync(file).equals(before)).toBe(true)
})
