import type { CallInput, Value } from '../../db/contract/contract.ts'
import type { TemporaryCollection } from './temporary-collection.ts'

export type List = CallInput<'import.preview'>
type Read = Extract<Value<'import.preview'>, { kind: 'read' }>

export function listOf(text: string | Buffer, more: Partial<List> = {}): List {
  return { fileName: 'list.csv', content: Buffer.from(text).toString('base64'), ...more }
}

/** A list as it is understood. Fails the test where it cannot be read. */
export async function previewed(test: TemporaryCollection, list: List): Promise<Read> {
  const read = await test.call('import.preview', list)
  if (read.kind !== 'read') throw new Error(read.because)
  return read
}

/** Answers every question with its first choice, again and again until none is open. */
export async function answered(test: TemporaryCollection, list: List): Promise<List> {
  const read = await previewed(test, list)
  const open = read.questions.filter((question) => question.answered === null)
  if (open.length === 0) return list
  const answers = Object.fromEntries(open.map(({ id, choices }) => [id, choices[0]?.value ?? '']))
  return answered(test, { ...list, answers: { ...list.answers, ...answers } })
}
