import { isMessage } from '../../messages/message.ts'
import { prepared } from '../../queries/prepared.ts'
import type { Reading } from '../book/context.ts'

/** An answer in which every person that a message names by id has a name: the one they go by now. */
export function withNames<T>({ sqlite }: Reading, answer: T): T {
  const nameOf = prepared(sqlite, 'SELECT name FROM person WHERE id = ?').pluck()
  const named = (part: unknown, isTold: boolean): unknown => {
    if (typeof part !== 'object' || part === null) return part
    if (Array.isArray(part)) return part.map((each) => named(each, isTold))
    if (Object.getPrototypeOf(part) !== Object.prototype) return part
    if (isTold && 'person' in part && typeof part.person === 'number') {
      const name = nameOf.get(part.person) as string | undefined
      return name === undefined ? part : { ...part, name }
    }
    const inMessage = isTold || isMessage(part)
    return Object.fromEntries(Object.entries(part).map(([key, value]) => [key, named(value, inMessage)]))
  }
  return named(answer, false) as T
}
