import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { contract, type ParsedInput } from '../../db/contract/contract.ts'
import { createCollection } from '../../db/migrations/open-file.ts'
import { runOperation, type ServiceName } from '../../db/services/run-operation.ts'

// npm run bench:list: a list of 50,000 gifts of 8,000 varieties and 3,000 donors, first looked at and then taken in.

const ROWS = 50_000
const now = () => new Date('2026-11-25T12:00:00Z')

const folder = mkdtempSync(join(tmpdir(), 'drawer-bench-'))
const collection = await createCollection(join(folder, 'bench.drawer'), {
  kind: 'own',
  libraryName: 'Bench',
  accessionPattern: 'B{####}',
  key: 'bench-begun',
  now,
  newId: () => '00000000-0000-4000-8000-000000000003',
})

function call<N extends ServiceName>(name: N, input: object) {
  return runOperation(collection, name, contract[name].input.parse(input) as ParsedInput<N>, now)
}

async function timed(what: string, act: () => Promise<unknown>): Promise<void> {
  const [began, spent] = [performance.now(), process.cpuUsage()]
  await act()
  const seconds = (performance.now() - began) / 1_000
  const { user, system } = process.cpuUsage(spent)
  const busy = ((user + system) / 1_000_000).toFixed(2)
  console.log(`${what.padEnd(28)} ${seconds.toFixed(2)} s, of them ${busy} s at work`)
}

const crops = ['Tomato', 'Common bean', 'Garden pea', 'Lettuce', 'Runner bean']
const rows = Array.from({ length: ROWS }, (_, index) =>
  [
    `Q-${index}`,
    crops[index % crops.length],
    `Variety ${index % 8_000}`,
    2_000 + (index % 25),
    `${((index % 400) + 1) / 4} g`.replace('.', ','),
    `Donor ${index % 3_000}`,
    `${(index % 28) + 1}.${(index % 12) + 1}.2025`,
    'sown every year in the long bed',
  ].join(';'),
)
const text = ['Number;Crop;Variety;Year;Amount;Donor;Received;Notes', ...rows].join('\n')
const list = { fileName: 'list.csv', content: Buffer.from(text).toString('base64') }
await timed(`${ROWS} rows looked at`, () => call('list.foresee', list))
await timed(`${ROWS} rows taken in`, () => call('list.take-in', { key: 'bench-list', ...list }))
collection.close()
rmSync(folder, { recursive: true })
