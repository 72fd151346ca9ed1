import { expect } from 'vitest'
import type { OpenCollection } from '../../db/migrations/open-file.ts'
import { wholeRows, wholeTables } from '../../db/queries/whole-tables.ts'
import { readingOf } from '../../db/services/book/context.ts'
import { makePackage } from '../../db/services/exchange/data-package.ts'
import { aCollection, NOW, type TemporaryCollection } from './temporary-collection.ts'

const WHOLE = { people: true, places: true }

/** Every record of a collection by table, balances with them, but for what a file is started as. */
export function everyRecord({ sqlite }: OpenCollection): Record<string, unknown[]> {
  const tables = wholeTables(sqlite).map((table) => [table.name, wholeRows(sqlite, table)] as const)
  const balances = sqlite
    .prepare('SELECT id, balance_count, balance_mass_mg, holds_seed FROM lot ORDER BY id')
    .all()
  const settings = sqlite.prepare("SELECT *, '' AS kind FROM collection").all()
  return { ...Object.fromEntries(tables), balances, collection: settings }
}

/** The whole collection as a data package, with people and places unless asked otherwise; base64. */
export const packed = (collection: OpenCollection, input = WHOLE) =>
  makePackage(readingOf(collection, NOW), input).content

/** Reads a package into a fresh collection, and looks at what came of it. */
export async function readInto(
  content: string,
  then: (copy: TemporaryCollection) => Promise<void>,
): Promise<void> {
  const copy = await aCollection()
  try {
    await copy.call('package.import', { content })
    expect((await copy.call('collection.check', {})).findings).toEqual([])
    await then(copy)
  } finally {
    copy.remove()
  }
}
