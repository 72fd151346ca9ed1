import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { CallInput, ParsedInput, Value } from '../../db/contract/contract.ts'
import { contract } from '../../db/contract/contract.ts'
import type { Problem } from '../../db/contract/problem.ts'
import { Refusal } from '../../db/contract/refusal.ts'
import type { Manner } from '../../db/messages/texts.ts'
import { createCollection, type OpenCollection, openCollection } from '../../db/migrations/open-file.ts'
import { runOperation, type ServiceName } from '../../db/services/run-operation.ts'
import { templateOf } from '../support/templates.ts'
import { inEnglish } from './in-english.ts'

/** The moment at which tests happen, unless they say otherwise. */
export const NOW = new Date(2026, 2, 14, 10, 30)
export const TODAY = '2026-03-14'

/** A real collection file in a folder of its own, with calls in short. */
export interface TemporaryCollection {
  readonly collection: OpenCollection
  readonly folder: string
  /** Runs an operation as a caller would: defaults filled in, a fresh key for each write unless one is given. */
  call<N extends ServiceName>(name: N, input: WithoutKey<CallInput<N>>): Promise<Value<N>>
  /** Runs an operation that must be refused, and gives the problem. Fails the test when it is not. */
  refused<N extends ServiceName>(name: N, input: WithoutKey<CallInput<N>>): Promise<Problem>
  /** Lets the next calls happen on another day, 'YYYY-MM-DD', at half past ten. */
  goTo(day: string): void
  remove(): void
}

type WithoutKey<T> = T extends { key: string } ? Omit<T, 'key'> & { key?: string } : T

let keys = 0

export async function aCollection(accessionPattern = 'HL{yy}-{####}'): Promise<TemporaryCollection> {
  const template = await templateOf(`own ${accessionPattern}`, (file) => startIn(file, accessionPattern))
  const folder = mkdtempSync(join(tmpdir(), 'drawer-test-'))
  const file = join(folder, 'test.drawer')
  copyFileSync(template, file)
  const collection = await openCollection(file, { access: 'write', now: () => NOW })
  let now = NOW
  const call: TemporaryCollection['call'] = (name, input) => {
    keys += 1
    const withKey =
      contract[name].access === 'writes'
        ? { key: `test-key-${String(keys).padStart(6, '0')}`, ...input }
        : input
    const parsed = contract[name].input.parse(withKey) as ParsedInput<typeof name>
    return runOperation(collection, name, parsed, () => now).then((result) =>
      inEnglish(result, mannerOf(collection)),
    )
  }
  return {
    collection,
    folder,
    call,
    async refused(name, input) {
      try {
        await call(name, input)
      } catch (cause) {
        if (cause instanceof Refusal) return inEnglish<Problem>(cause.problem, mannerOf(collection))
        throw cause
      }
      throw new Error(`${name} was not refused`)
    },
    goTo(day) {
      now = new Date(`${day}T10:30:00`)
    },
    remove() {
      collection.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** How the library writes by now; undefined in a file that a test filled with what nothing is written by. */
function mannerOf({ sqlite }: OpenCollection): Manner | undefined {
  const manner = sqlite.prepare('SELECT locale, mass_units AS massUnits FROM collection').get() as Manner
  try {
    return Intl.getCanonicalLocales(manner.locale).length > 0 ? manner : undefined
  } catch {
    return undefined
  }
}

async function startIn(file: string, accessionPattern: string): Promise<void> {
  const started = await createCollection(file, {
    kind: 'own',
    libraryName: 'Quillhaven Seed Drawer',
    accessionPattern,
    key: 'started-here',
    now: () => NOW,
    newId: () => '00000000-0000-4000-8000-000000000001',
  })
  started.close()
}

type GiftInput = CallInput<'intake.record'>['gifts'][number]

/** A gift of bean seed, valid and dull: 100 g, unweighed by the hundred, harvested in 2024. */
export function aGift(more: Partial<GiftInput> = {}): GiftInput {
  return {
    variety: { newVariety: { cropId: 'bean', name: 'Miller’s Pole' } },
    harvest: '2024',
    amount: '100 g',
    ...more,
  }
}

/** Takes one gift in, and gives what the table shows of it. */
export async function takeIn(test: TemporaryCollection, more: Partial<GiftInput> = {}) {
  const { taken, entryId } = await test.call('intake.record', {
    donor: null,
    receivedOn: TODAY,
    gifts: [aGift(more)],
  })
  const first = taken[0]
  if (first === undefined) throw new Error('Nothing was taken in')
  return { ...first, entryId }
}
