import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { contract, type ParsedInput, type Value } from '../../db/contract/contract.ts'
import { createCollection } from '../../db/migrations/open-file.ts'
import { runOperation, type ServiceName } from '../../db/services/run-operation.ts'
import { inEnglish } from '../builders/in-english.ts'

const now = () => new Date('2026-11-25T12:00:00Z')

export interface FreshCollection {
  readonly call: <N extends ServiceName>(name: N, input: object) => Promise<Value<N>>
  readonly remove: () => void
}

/** An empty collection in the temporary folder, for files to be taken into. */
export async function freshCollection(): Promise<FreshCollection> {
  const folder = mkdtempSync(join(tmpdir(), 'drawer-bench-'))
  const collection = await createCollection(join(folder, 'bench.drawer'), {
    kind: 'own',
    libraryName: 'Bench',
    accessionPattern: 'B{####}',
    key: 'bench-begun',
    now,
    newId: () => '00000000-0000-4000-8000-000000000003',
  })
  return {
    call: async (name, input) =>
      inEnglish(
        await runOperation(
          collection,
          name,
          contract[name].input.parse(input) as ParsedInput<typeof name>,
          now,
        ),
      ),
    remove: () => {
      collection.close()
      rmSync(folder, { recursive: true })
    },
  }
}

/** Does something and tells how long it took and how much of that the processor was at it. */
export async function timed(what: string, act: () => Promise<unknown>): Promise<void> {
  const [began, spent] = [performance.now(), process.cpuUsage()]
  await act()
  const seconds = (performance.now() - began) / 1_000
  const { user, system } = process.cpuUsage(spent)
  const busy = ((user + system) / 1_000_000).toFixed(2)
  console.log(`${what.padEnd(36)} ${seconds.toFixed(2)} s, of them ${busy} s at work`)
}
