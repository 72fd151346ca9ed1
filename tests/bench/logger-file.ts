import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { contract, type ParsedInput } from '../../db/contract/contract.ts'
import { wallClock } from '../../db/domain/climate/reading.ts'
import { createCollection } from '../../db/migrations/open-file.ts'
import { runOperation, type ServiceName } from '../../db/services/run-operation.ts'

// npm run bench:readings: a data logger's file of 100,000 rows, first looked at and then taken in.

const ROWS = 100_000
const BEGAN_MINUTE = 28_000_000
const EVERY_MINUTES = 10
const now = () => new Date('2026-11-25T12:00:00Z')

const folder = mkdtempSync(join(tmpdir(), 'drawer-bench-'))
const collection = await createCollection(join(folder, 'bench.drawer'), {
  kind: 'own',
  libraryName: 'Bench',
  accessionPattern: 'B{####}',
  key: 'bench-begun',
  now,
  newId: () => '00000000-0000-4000-8000-000000000002',
})

function call<N extends ServiceName>(name: N, input: object) {
  return runOperation(collection, name, contract[name].input.parse(input) as ParsedInput<N>, now)
}

async function timed(what: string, act: () => Promise<unknown>): Promise<void> {
  const began = performance.now()
  await act()
  console.log(`${what.padEnd(36)} ${((performance.now() - began) / 1_000).toFixed(2)} s`)
}

const { placeId } = await call('place.create', { key: 'bench-place', name: 'Room', kind: 'room' })
const rows = Array.from({ length: ROWS }, (_, index) => {
  const [day, clock] = wallClock(BEGAN_MINUTE + index * EVERY_MINUTES).split('T') as [string, string]
  const [year, month, date] = day.split('-')
  const degrees = (18 + 4 * Math.sin(index / 144)).toFixed(1).replace('.', ',')
  return `${index + 1};${date}.${month}.${year} ${clock}:00;${degrees};${(45 + (index % 70) / 10).toFixed(1).replace('.', ',')}`
})
const file = { placeId, fileName: 'room.csv', text: ['No;Zeit;Temperatur °C;Feuchte %', ...rows].join('\n') }
await timed(`${ROWS} rows looked at`, () => call('readings.foresee-file', file))
await timed(`${ROWS} rows taken in`, () => call('readings.import-file', { key: 'bench-import', ...file }))
await timed('the place shown over all of them', () => call('storage.get', { placeId, days: 36_500 }))
await timed('every place listed', () => call('storage.list', {}))
collection.close()
rmSync(folder, { recursive: true })
