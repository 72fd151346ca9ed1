import type { Value } from '../contract/contract.ts'
import { backUp } from '../migrations/back-up.ts'
import type { Reading } from './context.ts'

export async function backUpCollection(reading: Reading): Promise<Value<'collection.back-up'>> {
  const { file, bytes } = await backUp(reading.sqlite, reading.collection.file, 'kept', reading.now)
  return { file, bytes }
}
