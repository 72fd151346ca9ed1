import { createHash } from 'node:crypto'
import { existsSync } from 'node:fs'
import type { ParsedInput, Result } from '../../contract/contract.ts'
import { refuse } from '../../contract/refusal.ts'
import { readPattern } from '../../domain/numbers/pattern.ts'
import { message } from '../../messages/message.ts'
import { createCollection, type OpenCollection, openCollection } from '../../migrations/open-file.ts'
import { rowWith } from '../../queries/rows.ts'
import { entry } from '../../schema/collection-tables.ts'

/** The pattern of a library that has not chosen one: a letter first, the year, a running number. */
const USUAL_PATTERN = 'SL{yy}-{####}'

/** A collection that was just started, open for writing, and what is answered of it. */
export interface Started {
  readonly collection: OpenCollection
  readonly value: Result<'collection.create'>
}

/**
 * Starts an empty collection of the keeper's own in a new file.
 *
 * Throws a Refusal where a file is there already, unless it is the collection that this very request started.
 */
export async function startCollection(
  file: string,
  input: ParsedInput<'collection.create'>,
  { now, newId }: { readonly now: () => Date; readonly newId: () => string },
): Promise<Started> {
  const reading = readPattern(input.accessionPattern ?? USUAL_PATTERN)
  if (reading.kind === 'refused') {
    refuse('pattern-unfit', reading.because, {
      field: 'accessionPattern',
      todo: message('collection.nothing-started'),
    })
  }
  const collection =
    (await startedBefore(file, input, now)) ??
    (await createCollection(file, {
      kind: 'own',
      libraryName: input.libraryName,
      accessionPattern: reading.pattern,
      key: input.key,
      now,
      newId,
    }))
  const said = message('collection.started', { name: input.libraryName })
  return { collection, value: { entryId: 1, said, undoable: false, file: collection.file } }
}

/** The collection that an earlier call with this key started in this file, or null. */
async function startedBefore(
  file: string,
  input: ParsedInput<'collection.create'>,
  now: () => Date,
): Promise<OpenCollection | null> {
  if (!existsSync(file)) return null
  const reader = await openCollection(file, { access: 'read', now })
  const first = rowWith(reader.sqlite, entry, { id: 1 })
  reader.close()
  if (first?.key !== input.key) return null
  if (first.inputDigest !== createHash('sha256').update(input.libraryName).digest('hex')) {
    refuse('key-used-otherwise', message('problem.key-used-for-else'), {
      field: 'key',
      todo: message('problem.key-used-for-else-todo'),
    })
  }
  return openCollection(file, { access: 'write', now })
}
