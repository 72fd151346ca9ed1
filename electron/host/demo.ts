import { existsSync, mkdirSync } from 'node:fs'
import { mkdtemp } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import type { Result } from '../../db/contract/contract.ts'
import { message } from '../../db/messages/message.ts'
import { moveFile, removeFile } from '../../db/migrations/held-files.ts'
import type { OpenCollection } from '../../db/migrations/open-file.ts'
import type { CollectionBackend } from './collection-backend.ts'

/** Makes the demonstration, in a folder of its own first: a half-made one never carries the real name. */
export async function makeDemoAt(file: string, backend: Pick<CollectionBackend, 'makeDemo'>): Promise<void> {
  mkdirSync(dirname(file), { recursive: true })
  const making = await mkdtemp(join(dirname(file), '.making-demo-'))
  try {
    const unfinished = join(making, basename(file))
    await backend.makeDemo(unfinished)
    if (!existsSync(file)) moveFile(unfinished, file)
  } finally {
    removeFile(making)
  }
}

/** What is answered when the demonstration was opened: nothing was written, so its newest entry is named. */
export async function sayDemoOpened(
  demo: OpenCollection,
  backend: Pick<CollectionBackend, 'run'>,
): Promise<Result<'collection.open-demo'>> {
  const { entries } = await backend.run(demo, 'entry.list', { limit: 1 })
  return {
    entryId: entries[0]?.entryId ?? 1,
    said: message('collection.opened-demo'),
    undoable: false,
    file: demo.file,
  }
}
