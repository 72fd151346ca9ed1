import { readFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { refuse } from '../contract/refusal.ts'
import { message } from '../messages/message.ts'

/** Marks a file as a collection of this app, in the header of the file: the letters 'CDrw'. */
export const APPLICATION_ID = 0x43447277

/** Where the migration SQL lives; a bundled app names its own copy by environment variable. */
export const MIGRATIONS_FOLDER =
  process.env['COMMON_DRAWER_MIGRATIONS'] ?? dirname(fileURLToPath(import.meta.url))

/** The schema number that a folder of migrations leads to: one for each migration. */
export function newestVersion(folder: string): number {
  const journal: { entries: unknown[] } = JSON.parse(
    readFileSync(join(folder, 'meta', '_journal.json'), 'utf8'),
  )
  return journal.entries.length
}

/** Refuses a file that a newer version of the app made. */
export function refuseTheFuture(version: number, newest: number): void {
  if (version <= newest) return
  refuse('file-from-the-future', message('file.from-newer-version', { version, newest }), {
    todo: message('file.from-newer-version-todo'),
  })
}
