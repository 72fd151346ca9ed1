import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { contract } from '../../db/contract/contract.ts'
import { createCollection, type OpenCollection, openCollection } from '../../db/migrations/open-file.ts'
import { runOperation, type ServiceName } from '../../db/services/run-operation.ts'
import { callOnFile } from '../support/command-line.ts'
import { sized } from '../support/sized.ts'

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
    'lot.record-weight',
    { key: 'sequence-05', lotId: 1, on: EARLIER, replicates: [{ seeds: 100, grams: 24.9 }] },
  ],
  ['germination.record', { key: 'sequence-06', lotId: 1, on: EARLIER, tested: 20, sprouted: 18 }],
  ['entry.undo', { key: 'sequence-07', entryId: 7 }],
]

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'drawer-ways-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const now = () => new Date()

async function started(file: string): Promise<OpenCollection> {
  return createCollection(file, {
    kind: 'own',
    libraryName: 'Two Ways',
    accessionPattern: 'TW-{####}',
    key: 'sequence-00',
    now,
    newId: () => crypto.randomUUID(),
  })
}

async function inProcess(collection: OpenCollection, steps: typeof SEQUENCE): Promise<void> {
  for (const [name, input] of steps) {
    await runOperation(collection, name, contract[name].input.parse(input) as never, now)
  }
}

/** Everything in a file but what tells one run from another: when it was written, the file's own name, salts and what hashes them. */
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
    dump[name] = rows.map(({ recorded_at, created_at, added_at, uuid, hash, salt, digest, ...row }) => row)
  }
  return dump
}

/** Each call by the command line starts a process, which takes a second: few in every run, all in the long one. */
const BY_LINE: ReadonlySet<ServiceName> = sized(
  new Set(['intake.record']),
  new Set(SEQUENCE.map(([name]) => name)),
)

it('writes the same file by command line and in process', { tags: 'long', timeout: 120_000 }, async () => {
  const [byLine, byCode] = [join(folder, 'line.drawer'), join(folder, 'code.drawer')]
  const first = await started(byLine)
  first.close()
  for (const step of SEQUENCE) {
    if (BY_LINE.has(step[0])) await callOnFile(byLine, ...step)
    else {
      const open = await openCollection(byLine, { access: 'write', now })
      await inProcess(open, [step])
      open.close()
    }
  }
  const other = await started(byCode)
  await inProcess(other, SEQUENCE)
  const one = await openCollection(byLine, { access: 'read', now })
  expect(contents(one)).toEqual(contents(other))
  expect(contents(one)['movement']).toHaveLength(8)
  one.close()
  other.close()
})

const CALLERS = sized(2, 9)

it('gives numbers without gaps and without repeats to callers at once', {
  tags: 'long',
  timeout: 120_000,
}, async () => {
  const file = join(folder, 'crowd.drawer')
  const own = await started(file)
  own.close()
  const gift = {
    donor: null,
    receivedOn: EARLIER,
    gifts: [{ variety: { newVariety: { cropId: 'bean', name: 'Amber' } }, amount: '50 g' }],
  }
  const answers = await Promise.all(
    Array.from({ length: CALLERS }, () => callOnFile(file, 'intake.record', gift)),
  )
  const numbers = answers.map(({ taken }) => taken[0]?.accessionNumber)
  expect(numbers.toSorted()).toEqual(Array.from({ length: CALLERS }, (_, index) => `TW-000${index + 1}`))
  const open = await openCollection(file, { access: 'read', now })
  expect(await runOperation(open, 'collection.check', {}, now)).toMatchObject({
    clean: true,
    checked: { accessions: CALLERS },
  })
  open.close()
})
