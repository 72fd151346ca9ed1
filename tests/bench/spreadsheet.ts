import { spawnSync } from 'node:child_process'
import { createWriteStream, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { finished } from 'node:stream/promises'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import Database from 'better-sqlite3'
import { contract, type ParsedInput } from '../../db/contract/contract.ts'
import { openCollection } from '../../db/migrations/open-file.ts'
import { runOperation, type ServiceName } from '../../db/services/run-operation.ts'
import { benchCollection } from './build-collection.ts'

// npm run bench:spreadsheet: load, filter and sum of the bench collection here, by hand on bare SQLite, and in the
// spreadsheet program of Debian (libreoffice-calc with python3-uno), run without a window. For a quiet machine.

const { values } = parseArgs({ options: { lots: { type: 'string', default: '100000' } } })
const lots = Number(values.lots)
if (!Number.isSafeInteger(lots) || lots < 100) throw new RangeError('--lots takes a whole number from 100')
const WORDS = 'Amber'
const PYTHON = '/usr/bin/python3'
const now = () => new Date('2026-11-25T12:00:00Z')

const soffice = spawnSync('sh', ['-c', 'command -v soffice'], { encoding: 'utf8' }).stdout.trim()
const speaks = spawnSync(PYTHON, ['-c', 'import uno']).status === 0
if (soffice === '' || !speaks) {
  console.log(
    'Skipped: there is no spreadsheet program here. apt-get install --no-install-recommends libreoffice-calc python3-uno brings one.',
  )
  process.exit(0)
}

const file = await benchCollection({ lots, movementsPerLot: 10 })
const folder = mkdtempSync(join(tmpdir(), 'drawer-spreadsheet-'))
const [lotsFile, movementsFile] = [join(folder, 'lots.csv'), join(folder, 'movements.csv')]
const LOTS = `SELECT lot.number, crop.common_name, variety.name, storage_place.path, role, balance_count, balance_mass_mg / 1000.0
  FROM lot JOIN accession ON accession.id = accession_id JOIN variety ON variety.id = variety_id
    JOIN crop ON crop.id = crop_id LEFT JOIN storage_place ON storage_place.id = place_id ORDER BY lot.number`
const MOVEMENTS = `SELECT lot.number, on_date, movement.kind, count, mass_mg / 1000.0
  FROM movement JOIN lot ON lot.id = lot_id ORDER BY movement.id`

/** Writes the rows of a question as CSV; nothing in the bench collection needs quotes but the names. */
async function write(sqlite: Database.Database, to: string, head: string, sql: string): Promise<void> {
  const out = createWriteStream(to)
  out.write(`${head}\n`)
  for (const row of sqlite.prepare(sql).raw().iterate()) {
    out.write(
      `${(row as unknown[]).map((cell) => (typeof cell === 'string' ? `"${cell}"` : cell)).join(',')}\n`,
    )
  }
  out.end()
  await finished(out)
}

async function timed<T>(work: () => T | Promise<T>): Promise<{ ms: number; value: T }> {
  const begun = performance.now()
  const value = await work()
  return { ms: performance.now() - begun, value }
}

try {
  const sqlite = new Database(file, { readonly: true })
  await write(sqlite, lotsFile, 'lot,crop,variety,place,role,seeds,grams', LOTS)
  await write(sqlite, movementsFile, 'lot,day,kind,seeds,grams', MOVEMENTS)
  const lotId = Math.floor(lots / 2)
  const number = sqlite.prepare('SELECT number FROM lot WHERE id = ?').pluck().get(lotId) as string
  sqlite.close()

  const bareLoad = await timed(() => {
    const bare = new Database(file, { readonly: true })
    return { bare, rows: bare.prepare(`${LOTS} LIMIT 100`).all() }
  })
  const { bare } = bareLoad.value
  const bareFilter = await timed(
    () => bare.prepare(`SELECT * FROM (${LOTS}) WHERE name LIKE '%${WORDS}%'`).all().length,
  )
  const bareSum = await timed(() =>
    bare
      .prepare('SELECT sum(count) FROM movement JOIN lot ON lot.id = lot_id WHERE number = ?')
      .pluck()
      .get(number),
  )
  bare.close()

  const call = <N extends ServiceName>(name: N, input: object) =>
    runOperation(ours.value.collection, name, contract[name].input.parse(input) as ParsedInput<N>, now)
  const ours = await timed(async () => {
    const collection = await openCollection(file, { access: 'read', now })
    const input = contract['lot.list'].input.parse({})
    return { collection, page: await runOperation(collection, 'lot.list', input, now) }
  })
  const ourFilter = await timed(async () => (await call('lot.list', { text: WORDS, emptyToo: true })).total)
  const ourSum = await timed(async () => (await call('lot.get', { lotId })).quantity.count)
  ours.value.collection.close()

  const script = fileURLToPath(new URL('./in-spreadsheet.py', import.meta.url))
  const asked = spawnSync(PYTHON, [script, soffice, lotsFile, movementsFile, WORDS, number], {
    encoding: 'utf8',
  })
  if (asked.status !== 0) throw new Error(`The spreadsheet program did not do it: ${asked.stderr}`)
  const sheet = JSON.parse(asked.stdout.trim().split('\n').at(-1) ?? '') as Record<string, number>
  const seconds = (name: string) => 1_000 * (sheet[name] ?? Number.NaN)
  const line = (name: string, our: number, plain: number, theirs: number) =>
    console.log(
      `  ${name.padEnd(46)} ours ${our.toFixed(1).padStart(8)} ms  bare ${plain.toFixed(1).padStart(8)} ms  spreadsheet ${theirs.toFixed(0).padStart(8)} ms  ${(theirs / our).toFixed(0)} x ours`,
    )
  console.log(`${lots} lots and ${lots * 10} movements; each once, the file read from memory by all three:`)
  line(
    'load: open, and show the first lots',
    ours.ms,
    bareLoad.ms,
    seconds('load lots') + seconds('load movements'),
  )
  line(`filter: lots with ${WORDS} in their name`, ourFilter.ms, bareFilter.ms, seconds('filter'))
  line('sum: what the ledger leaves of one lot', ourSum.ms, bareSum.ms, seconds('sum'))
  console.log(
    `found: ${ourFilter.value}, ${bareFilter.value} and ${sheet['rows']} lots; ${ourSum.value}, ${bareSum.value} and ${sheet['seeds']} seeds. Start of the spreadsheet program: ${(sheet['start'] ?? 0).toFixed(1)} s.`,
  )
  if (
    bareFilter.value !== sheet['rows'] ||
    bareSum.value !== sheet['seeds'] ||
    ourSum.value !== bareSum.value
  )
    throw new Error('The three do not agree: what was timed is not the same question.')
} finally {
  rmSync(folder, { recursive: true, force: true })
}
