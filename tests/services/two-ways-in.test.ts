import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { contract } from '../../db/contract/contract.ts'
import { createCollection, type OpenCollection, openCollection } from '../../db/migrations/open-file.ts'
import { runOperation, type ServiceName } from '../../db/services/run-operation.ts'
import { callOnFile } from '../support/command-line.ts'

/** The first of this month: not in the future for either way in. */
const EARLIER = `${new Date().toISOString().slice(0, 8)}01`

const SEQUENCE: readonly (readonly [ServiceName, object])[] = [
  ['place.create', { key: 'sequence-01', name: 'Seed room', kind: 'room' }],
  [
    'intake.record',
    {
      key: 'sequence-02',
      donor: {
        newPerson: { name: 'Orsolya Venn', town: 'Quillhaven', mayWrite: true, email: 'o.venn@example.org' },
      },
      receivedOn: EARLIER,
      gifts: [
        {
          variety: { newVariety: { cropId: 'pea', name: 'Hrášek' } },
          amount: '80,5 g',
          sample: '25 weigh 6.10 g',
          placeId: 1,
        },
        {
          variety: { newVariety: { cropId: 'beet', name: 'Κόκκινο' } },
          amount: '120 clusters',
          cautions: ['pests-seen'],
        },
      ],
    },
  ],
  [
    'withdrawal.record',
    {
      key: 'sequence-03',
      person: { personId: 1 },
      on: EARLIER,
      lines: [{ lotId: 1, amount: '2 packets of 20' }],
    },
  ],
  ['lot.split', { key: 'sequence-04', lotId: 1, on: EARLIER, amount: '100 seeds', role: 'reserve' }],
  [
    'lot.weigh-seeds',
    { key: 'sequence-05', lotId: 1, on: EARLIER, replicates: [{ seeds: 100, grams: 24.9 }] },
  ],
  ['germination.record', { key: 'sequence-06', lotId: 1, on: EARLIER, tested: 20, sprouted: 18 }],
  ['entry.take-back', { key: 'sequence-07', entryId: 7 }],
]

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'drawer-ways-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

async function inProcess(file: string): Promise<void> {
  const now = () => new Date()
  const collection = await createCollection(file, {
    kind: 'own',
    libraryName: 'Two Ways',
    accessionPattern: 'TW-{####}',
    key: 'sequence-00',
    now,
    newId: () => crypto.randomUUID(),
  })
  for (const [name, input] of SEQUENCE) {
    await runOperation(collection, name, contract[name].input.parse(input) as never, now)
  }
  collection.close()
}

/** Everything in a file but what tells one run from another: when it was written, and the file's own name. */
function contents({ sqlite }: OpenCollection): Record<string, unknown[]> {
  const names = sqlite
    .prepare(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE '\\_\\_%' ESCAPE '\\' ORDER BY name",
    )
    .pluck()
    .all() as string[]
  const dump: Record<string, unknown[]> = {}
  for (const name of names) {
    const rows = sqlite.prepare(`SELECT * FROM "${name}"`).all() as Record<string, unknown>[]
    dump[name] = rows.map(({ recorded_at, created_at, added_at, uuid, ...row }) => row)
  }
  return dump
}

it('writes the same file by command line and in process', async () => {
  const [byLine, byCode] = [join(folder, 'line.drawer'), join(folder, 'code.drawer')]
  await callOnFile(byLine, 'collection.start', {
    key: 'sequence-00',
    libraryName: 'Two Ways',
    accessionPattern: 'TW-{####}',
  })
  for (const [name, input] of SEQUENCE) await callOnFile(byLine, name, input)
  await inProcess(byCode)
  const [one, other] = await Promise.all(
    [byLine, byCode].map((file) => openCollection(file, { access: 'read', now: () => new Date() })),
  )
  if (one === undefined || other === undefined) throw new Error('A file was not made')
  expect(contents(one)).toEqual(contents(other))
  expect(contents(one)['movement']).toHaveLength(8)
  one.close()
  other.close()
}, 120_000)

it('gives numbers without gaps and without repeats to callers at once', async () => {
  const file = join(folder, 'crowd.drawer')
  await callOnFile(file, 'collection.start', { libraryName: 'A Crowd', accessionPattern: 'CR-{####}' })
  const gift = {
    donor: null,
    receivedOn: EARLIER,
    gifts: [{ variety: { newVariety: { cropId: 'bean', name: 'Amber' } }, amount: '50 g' }],
  }
  const answers = await Promise.all(Array.from({ length: 6 }, () => callOnFile(file, 'intake.record', gift)))
  const numbers = answers.map(({ taken }) => taken[0]?.accessionNumber)
  expect(numbers.toSorted()).toEqual(['CR-0001', 'CR-0002', 'CR-0003', 'CR-0004', 'CR-0005', 'CR-0006'])
  const check = await callOnFile(file, 'collection.check', {})
  expect(check).toMatchObject({ clean: true, checked: { accessions: 6 } })
}, 120_000)
