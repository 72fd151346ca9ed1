import { type ChildProcess, spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import { contract } from '../../../db/contract/contract.ts'
import type { Answer } from '../../../db/contract/problem.ts'
import { Refusal } from '../../../db/contract/refusal.ts'
import type { Sqlite } from '../../../db/migrations/connection.ts'
import { createCollection, type OpenCollection, openCollection } from '../../../db/migrations/open-file.ts'
import { readingOf } from '../../../db/services/book/context.ts'
import { withNames } from '../../../db/services/people/named.ts'
import { runOperation } from '../../../db/services/run-operation.ts'
import { seeded } from '../../bench/random.ts'
import { inEnglish } from '../../builders/in-english.ts'
import type { Asked } from './random-work.ts'

/** What came of a number of kills. */
export interface KillCounts {
  kills: number
  /** Writes that were answered before the kill, all found in the file. */
  answered: number
  refused: number
  /** Writes that were asked for and not answered, and came to be whole, or not at all. */
  unansweredWhole: number
  unansweredAbsent: number
  /** Kills that left half a transaction in the file, which opening undid. */
  halfInTheFile: number
}

/** A book that stays small enough for every row of it to be compared after each kill. */
const KILLS_OF_ONE_BOOK = 20

const now = () => new Date()
const FACTS = {
  kind: 'own',
  libraryName: 'Hollow Lane Library',
  accessionPattern: 'HL-{####}',
  key: 'started-here',
  now,
  newId: () => '00000000-0000-4000-8000-000000000004',
} as const

/**
 * Kills a host at work at random moments, and looks at the file after each.
 *
 * The oracle is a second book in which nobody is killed: it does the writes that the file says were done, in the file's
 * order, and then every row of both must be the same. Throws at the first difference.
 */
export async function killAndLook(kills: number, seed: number): Promise<KillCounts> {
  const counts: KillCounts = {
    kills: 0,
    answered: 0,
    refused: 0,
    unansweredWhole: 0,
    unansweredAbsent: 0,
    halfInTheFile: 0,
  }
  const random = seeded(seed)
  for (let done = 0; done < kills; done += KILLS_OF_ONE_BOOK) {
    const folder = mkdtempSync(join(tmpdir(), 'drawer-kill-'))
    try {
      await killOneBook(folder, Math.min(KILLS_OF_ONE_BOOK, kills - done), random, counts)
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  }
  return counts
}

async function killOneBook(folder: string, kills: number, random: () => number, counts: KillCounts) {
  const file = join(folder, 'a.drawer')
  const started = await createCollection(file, FACTS)
  started.close()
  const twin = await createCollection(join(folder, 'twin.drawer'), FACTS)
  try {
    for (let kill = 0; kill < kills; kill += 1) {
      const run = Math.floor(random() * 1_000_000_000)
      const when = { answers: Math.floor(random() ** 2 * 40), thenMs: random() * 30 }
      const said = await killAtWork(folder, file, run, when)
      if (isHot(`${file}-journal`)) counts.halfInTheFile += 1
      await lookAt(file, twin, said, counts)
      counts.kills += 1
    }
  } finally {
    twin.close()
  }
}

/** Whether a journal has its header: only then may the file hold part of a transaction. */
function isHot(journal: string): boolean {
  return existsSync(journal) && (readFileSync(journal)[0] ?? 0) !== 0
}

interface Said {
  readonly asked: readonly Asked[]
  readonly answers: ReadonlyMap<string, Answer<unknown>>
}

/** When a kill comes: after so many answers, and then some milliseconds into what follows. */
interface Moment {
  readonly answers: number
  readonly thenMs: number
}

/** Lets the host work and kills it; gives all it said. */
async function killAtWork(folder: string, file: string, run: number, when: Moment): Promise<Said> {
  const worker = join(import.meta.dirname, 'work-without-end.ts')
  const child = spawn(process.execPath, [worker, folder, file, String(run)])
  const lines = await linesUntilKilled(child, when)
  const asked: Asked[] = []
  const answers = new Map<string, Answer<unknown>>()
  for (const line of lines) {
    const [word = ''] = line.split(' ', 1)
    const value = JSON.parse(line.slice(word.length))
    if (word === 'asked') asked.push(value)
    else answers.set(value.key, value.answer)
  }
  return { asked, answers }
}

async function linesUntilKilled(child: ChildProcess, when: Moment): Promise<string[]> {
  let said = ''
  let wrong = ''
  const ended = new Promise((resolve) => child.once('close', resolve))
  child.stderr?.on('data', (part: Buffer) => {
    wrong += part.toString('utf8')
  })
  await new Promise<void>((resolve, reject) => {
    child.stdout?.on('data', (part: Buffer) => {
      said += part.toString('utf8')
      if (said.startsWith('asked') && said.split('\nanswered').length > when.answers) resolve()
    })
    ended.then(() => reject(new Error(`It ended by itself: ${wrong}`)))
  })
  await setTimeout(when.thenMs)
  child.kill('SIGKILL')
  await ended
  // What comes after the last line break was cut off by the kill: nobody heard it.
  return said.split('\n').slice(0, -1)
}

async function lookAt(file: string, twin: OpenCollection, said: Said, counts: KillCounts): Promise<void> {
  const opened = await openCollection(file, { access: 'write', now })
  try {
    const { findings } = await runOperation(opened, 'collection.check', {}, now)
    if (findings.length > 0) throw new Error(`The book is not right: ${JSON.stringify(findings)}`)
    for (const asked of said.asked) compareAnswer(opened, asked, said.answers.get(asked.key), counts)
    await doAgain(opened, twin, said)
    compareBooks(opened.sqlite, twin.sqlite)
  } finally {
    opened.close()
  }
}

/** Holds one question and its answer, if any, against what the file says of it. */
function compareAnswer(
  opened: OpenCollection,
  { key, name }: Asked,
  answer: Answer<unknown> | undefined,
  counts: KillCounts,
): void {
  const kept = opened.sqlite.prepare('SELECT answer FROM entry WHERE key = ?').pluck().get(key) as
    | string
    | undefined
  if (answer === undefined) {
    if (kept === undefined) counts.unansweredAbsent += 1
    else counts.unansweredWhole += 1
    return
  }
  if (answer.ok) {
    if (kept === undefined) throw new Error(`${name} was answered and is not in the file`)
    const told = inEnglish(withNames(readingOf(opened, now()), JSON.parse(kept)))
    if (JSON.stringify(told) !== JSON.stringify(answer.value))
      throw new Error(`${name} is in the file otherwise`)
    counts.answered += 1
    return
  }
  if (answer.problem.code === 'unexpected') throw new Error(`${name} went wrong: ${answer.problem.sentence}`)
  if (kept !== undefined) throw new Error(`${name} was refused and is in the file`)
  counts.refused += 1
}

/** Does in the twin what the file says was done since, in the file's order. */
async function doAgain(opened: OpenCollection, twin: OpenCollection, said: Said): Promise<void> {
  const last = twin.sqlite.prepare('SELECT max(id) FROM entry').pluck().get()
  const keys = opened.sqlite.prepare('SELECT key FROM entry WHERE id > ? ORDER BY id').pluck().all(last)
  for (const key of keys) {
    const asked = said.asked.find((one) => one.key === key)
    if (asked === undefined) throw new Error(`Nobody asked for ${String(key)}`)
    try {
      await runOperation(twin, asked.name, contract[asked.name].input.parse(asked.input) as never, now)
    } catch (thrown) {
      throw thrown instanceof Refusal ? new Error(`${asked.name}: ${thrown.problem.sentence}`) : thrown
    }
  }
}

/** What tells when a row was written, or which file it is: not the same in the twin. */
const OF_THE_CLOCK = new Set(['recorded_at', 'created_at', 'created_on', 'added_at', 'uuid'])
/** Drawn by chance, or over what was. */
const OF_CHANCE = new Set(['salt', 'digest', 'hash'])
/** Worked out again in the background whenever there is time for it. */
const OF_THE_BACKGROUND = new Set(['lot_forecast'])

function compareBooks(one: Sqlite, other: Sqlite): void {
  const tables = one
    .prepare("SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table'")
    .pluck()
    .all() as string[]
  for (const table of tables.filter((name) => !/^(sqlite_|__drizzle)/.test(name))) {
    if (OF_THE_BACKGROUND.has(table)) continue
    const [rows, expected] = [rowsOf(one, table), rowsOf(other, table)]
    if (rows !== expected) throw new Error(`${table} holds\n${rows}\nand should hold\n${expected}`)
  }
}

function rowsOf(sqlite: Sqlite, table: string): string {
  const columns = (
    sqlite.prepare('SELECT name FROM pragma_table_info(?)').pluck().all(table) as string[]
  ).filter((name) => !OF_THE_CLOCK.has(name) && !OF_CHANCE.has(name))
  const list = columns.map((name) => `"${name}"`).join(', ')
  return JSON.stringify(sqlite.prepare(`SELECT ${list} FROM "${table}" ORDER BY ${list}`).all())
}
