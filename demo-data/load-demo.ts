import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Refusal } from '../db/contract/refusal.ts'
import { english } from '../db/messages/english.ts'
import { tellAll } from '../db/messages/tell.ts'
import { createCollection } from '../db/migrations/open-file.ts'
import { DemoBook, type DemoStep } from './demo-book.ts'
import { stepsOf } from './demo-steps.ts'
import { readTables } from './demo-tables.ts'

const FOLDER = dirname(fileURLToPath(import.meta.url))
const STARTED_ON = '2022-09-03'
const OPENS_AT_MINUTE = 9 * 60
const MINUTES_APART = 3

/**
 * Makes the demonstration in a new file: an invented town's collection, written through the services from the files of
 * a folder, each entry on its own day. The same every time: nothing is drawn by chance or taken from the clock.
 *
 * Throws naming the file and row where the data do not fit; refuses a file that is there already.
 */
export async function makeDemoCollection(file: string, folder = FOLDER): Promise<void> {
  const tables = readTables(folder)
  const start = momentOf(STARTED_ON, 0)
  const collection = await createCollection(file, {
    kind: 'demo',
    libraryName: 'Quillhaven Seed Drawer (demo)',
    accessionPattern: 'QH{yy}-{####}',
    key: 'demo-started',
    now: () => start,
    newId: () => 'd3a0c0de-0000-4000-8000-00005eedd8a3',
  })
  try {
    // One transaction round them all: a thousand entries each synced to the disk by itself take half a minute.
    collection.sqlite.exec('BEGIN IMMEDIATE')
    const book = new DemoBook(collection, tables, start)
    await book.write('settings.change', 'demo-settings', { settings: { dueDates: true } })
    for (const [day, steps] of Map.groupBy(stepsOf(tables), ({ on }) => on)) await writeDay(book, day, steps)
    book.assertAllUsed()
    collection.sqlite.exec('COMMIT')
  } finally {
    collection.close()
  }
}

async function writeDay(book: DemoBook, day: string, steps: readonly DemoStep[]): Promise<void> {
  for (const [index, step] of steps.entries()) {
    book.now = momentOf(day, index)
    try {
      await step.write(book)
    } catch (cause) {
      throw new Error(`${step.where}: ${whyNot(cause)}`, { cause })
    }
  }
}

function whyNot(cause: unknown): string {
  if (cause instanceof Refusal) return tellAll(cause.problem.sentence, english.say) as string
  return cause instanceof Error ? cause.message : String(cause)
}

/** The keeper's own time of day: the first entry of a day at nine, the others after it. */
function momentOf(day: string, index: number): Date {
  const [year = 0, month = 0, date = 0] = day.split('-').map(Number)
  return new Date(year, month - 1, date, 0, OPENS_AT_MINUTE + MINUTES_APART * index)
}
