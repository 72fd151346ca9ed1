import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, onTestFinished, test } from 'vitest'
import { backupsIn, openSound, ownBackupFolder } from '../../db/migrations/backup-files.ts'
import { CollectionHolder } from '../../electron/host/collection-holder.ts'
import { realBackend } from '../../electron/host/real-backend.ts'
import { aCollection, takeIn } from '../builders/temporary-collection.ts'
import { counted } from '../support/counted.ts'
import { sized } from '../support/sized.ts'

const ENTRIES = 12_000
const KILLS = sized(1, 12)

/** A collection of some twenty megabytes, closed, so that a backup of it takes a while. */
async function aLargeFile(): Promise<{ folder: string; file: string }> {
  const book = await aCollection()
  onTestFinished(() => book.remove())
  await takeIn(book)
  book.collection.sqlite.exec(
    `INSERT INTO entry (key, operation, input_digest, answer, said, recorded_at)
     WITH RECURSIVE number (n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM number WHERE n < ${ENTRIES})
     SELECT 'large-' || n, 'bulk', '', hex(randomblob(800)), 'bulk', '2026-03-14T10:30:00.000Z' FROM number`,
  )
  book.collection.close()
  return { folder: book.folder, file: book.collection.file }
}

async function hostOn({ folder, file }: { folder: string; file: string }) {
  const holder = new CollectionHolder(folder, realBackend)
  onTestFinished(() => holder.close())
  expect(await holder.openFirst(file)).toBeNull()
  return holder
}

const leftIn = (file: string) => readdirSync(ownBackupFolder(file))

test('nobody waits for a backup: entries are written while it is made, how far it is can be seen, and it is whole', async () => {
  const large = await aLargeFile()
  const holder = await hostOn(large)
  let ended = false
  const made = holder.backUpByItself().finally(() => {
    ended = true
  })
  let seen = 0
  let written = 0
  while (!ended) {
    const { underWay } = (await holder.run('backup.list', {})) as { underWay: object | null }
    if (underWay !== null) seen += 1
    if (underWay !== null && written < 3) {
      const name = `Jar ${written}`
      await holder.run('place.create', { key: `amid-backup-${written}`, name, kind: 'jar', parentId: null })
      if (!ended) written += 1
    }
    await new Promise((resolve) => setTimeout(resolve, 1))
  }
  await made
  expect(written).toBeGreaterThan(0)
  expect(seen).toBeGreaterThan(0)
  const [backup] = backupsIn(ownBackupFolder(large.file), large.file)
  const copy = openSound(backup?.file ?? '')
  expect(copy.prepare('SELECT count(*) FROM entry').pluck().get()).toBeGreaterThan(ENTRIES)
  copy.close()
  expect(await holder.run('backup.list', {})).toMatchObject({ underWay: null, trouble: null })
})

test('closing in the middle of a backup leaves nothing of it, or all of it', async () => {
  const large = await aLargeFile()
  const holder = await hostOn(large)
  const made = holder.backUpByItself().then(
    () => 'whole',
    (thrown: Error) => thrown.message,
  )
  const copied = async () =>
    ((await holder.run('backup.list', {})) as { underWay: { copied: number } | null }).underWay?.copied ?? 0
  while ((await copied()) === 0) await new Promise((resolve) => setTimeout(resolve, 1))
  await holder.close()
  const whole = (await made) === 'whole'
  if (!whole) expect(await made).toMatch(/stopped before it was finished/)
  expect(leftIn(large.file)).toHaveLength(whole ? 1 : 0)
  for (const { file } of backupsIn(ownBackupFolder(large.file), large.file)) openSound(file).close()
})

test('a program killed in the middle of a backup leaves no half one that looks like one', async () => {
  const { file } = await aLargeFile()
  const program = fileURLToPath(new URL('./support/back-up-again-and-again.ts', import.meta.url))
  let unfinished = 0
  for (let kill = 0; kill < KILLS; kill += 1) {
    const child = spawn(process.execPath, [program, file], {
      stdio: ['ignore', 'pipe', 'inherit'],
    })
    await once(child.stdout, 'data')
    await new Promise((resolve) => setTimeout(resolve, (kill % 4) * 25))
    child.kill('SIGKILL')
    await once(child, 'exit')
    unfinished += leftIn(file).filter((name) => name.includes('.unfinished')).length
    for (const backup of backupsIn(ownBackupFolder(file), file)) openSound(backup.file).close()
  }
  expect(unfinished, 'some were killed in the middle').toBeGreaterThan(0)
  const book = await hostOn({ folder: join(file, '..'), file })
  expect(await book.run('collection.check', {})).toMatchObject({ findings: expect.any(Array) })
  counted('kills in the middle of a backup survived', KILLS)
})
