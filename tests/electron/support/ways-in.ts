import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { IpcMainInvokeEvent } from 'electron'
import type { Answer } from '../../../db/contract/problem.ts'
import { stopBackups } from '../../../db/migrations/backup-thread.ts'
import { openCollection } from '../../../db/migrations/open-file.ts'
import { readingOf } from '../../../db/services/book/context.ts'
import { settingsOf } from '../../../db/services/book/settings.ts'
import { backUpIfWritten, listBackups, restoreBackup } from '../../../db/services/collection/backups.ts'
import { startCollection } from '../../../db/services/collection/start-collection.ts'
import { runOperation } from '../../../db/services/run-operation.ts'
import { warmCaches } from '../../../db/services/warm-caches.ts'
import { OneCollection } from '../../../electron/command-line/one-collection.ts'
import { answerCall } from '../../../electron/host/answer-call.ts'
import type { CollectionBackend } from '../../../electron/host/collection-backend.ts'
import { CollectionHolder } from '../../../electron/host/collection-holder.ts'
import { openDoor } from '../../../electron/main/door.ts'
import { NOW } from '../../builders/temporary-collection.ts'
import { loopbackOver } from './loopback.ts'

/** One way by which a call reaches a collection. */
export interface WayIn {
  readonly folder: string
  /** What went to the log. */
  readonly logged: string[]
  call(name: string, input: unknown): Promise<Answer<unknown>>
  close(): Promise<void>
}

const now = () => NOW

/** The services at one fixed moment; the demonstration is a small collection, since its content is not the matter here. */
export const testBackend: CollectionBackend = {
  open: (file, access) => openCollection(file, { access, now }),
  begin: (file, input) =>
    startCollection(file, input, { now, newId: () => '00000000-0000-4000-8000-000000000002' }),
  async makeDemo(file) {
    const input = { key: 'demonstration', libraryName: 'Quillhaven' }
    const { collection } = await startCollection(file, input, {
      now,
      newId: () => '00000000-0000-4000-8000-000000000003',
    })
    collection.close()
  },
  restore: (input, target) => restoreBackup(input, target, now),
  backUpIfWritten: async (collection, label) =>
    void (await backUpIfWritten(readingOf(collection, NOW), label)),
  stopBackups,
  warmCaches: (collection) => warmCaches(readingOf(collection, NOW)),
  listBackups: (file, open, trouble) =>
    listBackups(file, open === null ? null : readingOf(open, NOW), trouble),
  speech: (collection) => settingsOf(readingOf(collection, NOW)),
  run: (collection, name, input) => runOperation(collection, name, input, now),
}

function newFolder(): string {
  return mkdtempSync(join(tmpdir(), 'drawer-way-'))
}

function holderIn(folder: string) {
  const logged: string[] = []
  const holder = new CollectionHolder(folder, testBackend)
  const answer = (name: unknown, input: unknown) =>
    answerCall(holder, name, input, (line) => logged.push(line))
  return { holder, logged, answer }
}

async function overLoopback(): Promise<WayIn> {
  const folder = newFolder()
  const { holder, logged, answer } = holderIn(folder)
  await holder.openFirst(null)
  const { serving, askCall } = await loopbackOver(answer)
  return {
    folder,
    logged,
    call: async (name, input) => JSON.parse((await askCall(name, input)).body) as Answer<unknown>,
    async close() {
      await serving.close()
      await holder.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

async function throughElectron(): Promise<WayIn> {
  const folder = newFolder()
  const { holder, logged, answer } = holderIn(folder)
  await holder.openFirst(null)
  let door: ((event: IpcMainInvokeEvent, ...call: unknown[]) => unknown) | undefined
  openDoor(
    {
      handle: (_channel, listener) => {
        door = listener
      },
    },
    { call: answer },
  )
  const mainFrame = { url: 'app://drawer/' }
  const event = { senderFrame: mainFrame, sender: { mainFrame } } as unknown as IpcMainInvokeEvent
  return {
    folder,
    logged,
    // Electron copies what crosses between processes by the structured clone algorithm.
    call: async (name, input) =>
      structuredClone(await door?.(event, name, structuredClone(input))) as Answer<unknown>,
    async close() {
      await holder.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

async function byCommandLine(): Promise<WayIn> {
  const folder = newFolder()
  const logged: string[] = []
  let file = join(folder, 'Demo collection.drawer')
  return {
    folder,
    logged,
    async call(name, input) {
      // A script names the file of each call; the story opens another one twice.
      if (name === 'collection.create') file = join(folder, 'Hollow Lane Library.drawer')
      if (name === 'collection.open-demo') file = join(folder, 'Demo collection.drawer')
      const answer = await answerCall(new OneCollection(file, testBackend), name, input, (line) =>
        logged.push(line),
      )
      return JSON.parse(JSON.stringify(answer)) as Answer<unknown>
    },
    async close() {
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

export const WAYS_IN = {
  loopback: overLoopback,
  electron: throughElectron,
  'command line': byCommandLine,
} as const
