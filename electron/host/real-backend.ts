import { randomUUID } from 'node:crypto'
import { stopBackups } from '../../db/migrations/backup-thread.ts'
import { openCollection } from '../../db/migrations/open-file.ts'
import { readingOf } from '../../db/services/book/context.ts'
import { settingsOf } from '../../db/services/book/settings.ts'
import { backUpIfWritten, listBackups, restoreBackup } from '../../db/services/collection/backups.ts'
import { startCollection } from '../../db/services/collection/start-collection.ts'
import { runOperation } from '../../db/services/run-operation.ts'
import { warmCaches } from '../../db/services/warm-caches.ts'
import type { CollectionBackend } from './collection-backend.ts'

const now = () => new Date()

/** The backend of the real app: the clock, the random source and the services. */
export const realBackend: CollectionBackend = {
  open: (file, access) => openCollection(file, { access, now }),
  begin: (file, input) => startCollection(file, input, { now, newId: randomUUID }),
  // Loaded only where it is wanted: most starts open a collection that is there.
  makeDemo: async (file) => (await import('../../demo-data/load-demo.ts')).makeDemoCollection(file),
  restore: (input, target) => restoreBackup(input, target, now),
  backUpIfWritten: async (collection, label) =>
    void (await backUpIfWritten(readingOf(collection, now()), label)),
  stopBackups,
  warmCaches: (collection) => warmCaches(readingOf(collection, now())),
  listBackups: (file, open, trouble) =>
    listBackups(file, open === null ? null : readingOf(open, now()), trouble),
  speech: (collection) => settingsOf(readingOf(collection, now())),
  run: (collection, name, input) => runOperation(collection, name, input, now),
}
