import { contract, type ParsedInput } from '../../db/contract/contract.ts'
import { openCollection } from '../../db/migrations/open-file.ts'
import { runOperation } from '../../db/services/run-operation.ts'
import { NOW, type TemporaryCollection } from './temporary-collection.ts'

/** What is answered of every accession from what is kept, and what a connection finds that only reads and keeps nothing. */
export async function keptAndFound(
  test: TemporaryCollection,
  now: Date = NOW,
): Promise<{ kept: unknown[]; found: unknown[] }> {
  const reader = await openCollection(test.collection.file, { access: 'read', now: () => now })
  const kept: unknown[] = []
  const found: unknown[] = []
  try {
    for (const name of ['accession.list-states', 'regeneration.list', 'germination.list-due'] as const) {
      const input = contract[name].input.parse(
        name === 'germination.list-due' ? { withinDays: 3_650 } : {},
      ) as ParsedInput<typeof name>
      kept.push(await runOperation(test.collection, name, input, () => now))
      found.push(await runOperation(reader, name, input, () => now))
    }
  } finally {
    reader.close()
  }
  return { kept, found }
}
