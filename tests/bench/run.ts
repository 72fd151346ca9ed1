import { copyFileSync, rmSync, statSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { contract, type ParsedInput } from '../../db/contract/contract.ts'
import { openCollection } from '../../db/migrations/open-file.ts'
import { runOperation, type ServiceName } from '../../db/services/run-operation.ts'
import { Bare } from './bare.ts'
import { benchCollection } from './build-collection.ts'
import { type Comparison, compare } from './measure.ts'

const { values } = parseArgs({ options: { lots: { type: 'string', default: '100000' } } })
const lots = Number(values.lots)
if (!Number.isSafeInteger(lots) || lots < 100) throw new RangeError('--lots takes a whole number from 100')

const now = () => new Date('2026-11-25T12:00:00Z')
const SHORT_ROUNDS = 31
const LONG_ROUNDS = 3
/** A keeper types 'amber hill': each prefix is a search of its own. */
const KEYSTROKES = ['a', 'am', 'amb', 'ambe', 'amber', 'amber h', 'amber hi', 'amber hill']

const built = performance.now()
const kept = await benchCollection({ lots, movementsPerLot: 10 })
console.log(
  `bench collection: ${lots} lots, ${lots * 10} movements, ${(statSync(kept).size / 1e6).toFixed(0)} MB (${((performance.now() - built) / 1000).toFixed(1)} s to have it ready)`,
)
const file = `${kept}.work.drawer`
copyFileSync(kept, file)
// A file of its own: the app writes nothing more where somebody else wrote into its file.
const bareFile = `${kept}.bare.drawer`
copyFileSync(kept, bareFile)

const open = () => openCollection(file, { access: 'write', now })
const results: Comparison[] = []
results.push(
  await compare(
    'open',
    11,
    async () => (await open()).close(),
    () => new Bare(bareFile).close(),
  ),
)
const collection = await open()
const bare = new Bare(bareFile)

function call<N extends ServiceName>(name: N, input: object) {
  return runOperation(collection, name, contract[name].input.parse(input) as ParsedInput<N>, now)
}

let visits = 0
const nextKey = (who: string) => {
  visits += 1
  return `bench-${who}-visit-${visits}`
}
const lotFor = () => 1 + ((visits * 7_919) % lots)
const visit = () => ({
  key: nextKey('ours'),
  person: null,
  on: '2026-11-25',
  lines: [{ lotId: lotFor(), amount: '1 seeds' }],
  despite: ['too-few-left', 'reserve', 'reference-sample'],
  reason: 'bench',
})

results.push(
  await compare(
    'first page of the shelf',
    SHORT_ROUNDS,
    () => call('lot.list', {}),
    () => bare.firstPage(),
  ),
)
results.push(
  await compare(
    'search, mean of eight keystrokes',
    9,
    async () => {
      for (const text of KEYSTROKES) await call('lot.list', { text })
    },
    () => KEYSTROKES.map((text) => bare.search(text)),
  ),
)
results.push(
  await compare(
    'one withdrawal committed',
    SHORT_ROUNDS,
    () => call('withdrawal.record', visit()).catch(() => undefined),
    () => bare.withdraw(lotFor(), nextKey('bare')),
  ),
)
results.push(
  await compare(
    'flags after one write',
    LONG_ROUNDS,
    () => {
      // How an accession stands is kept until something touches it: here the one of the first lot.
      collection.sqlite.exec('UPDATE lot SET id = id WHERE id = 1')
      return call('accession.list-states', {})
    },
    () => bare.flags(),
  ),
)
results.push(
  await compare(
    'what to regrow after one write',
    LONG_ROUNDS,
    () => {
      collection.sqlite.exec('UPDATE lot SET id = id WHERE id = 1')
      return call('regeneration.list', {})
    },
    () => bare.needs(),
  ),
)
results.push(
  await compare(
    'what to regrow, everything anew',
    LONG_ROUNDS,
    () => {
      collection.sqlite.exec('UPDATE collection SET id = id')
      return call('regeneration.list', {})
    },
    () => bare.needs(),
  ),
)
results.push(
  await compare(
    'forecasts of the whole collection',
    1,
    async () => {
      collection.sqlite.exec('UPDATE lot_forecast SET stale_since = 1')
      while ((await call('forecast.refresh', { limit: 1_000 })).left > 0);
    },
    () => bare.forecasts(),
  ),
)
bare.close()
const second = new Bare(kept)
results.push(
  await compare(
    'collection.check',
    1,
    () => call('collection.check', {}),
    () => second.check(),
  ),
)
second.close()
collection.close()
rmSync(file)
rmSync(bareFile)

console.log('\nmedian of turns taken about, ours beside bare better-sqlite3 under the same pragmas:')
for (const { name, oursMs, bareMs, ratio } of results) {
  const each = name.startsWith('search') ? KEYSTROKES.length : 1
  console.log(
    `  ${name.padEnd(34)} ${(oursMs / each).toFixed(2).padStart(10)} ms  bare ${(bareMs / each).toFixed(2).padStart(10)} ms  ratio ${ratio.toFixed(2)}`,
  )
}
