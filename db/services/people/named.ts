import { isMessage, type Message, type Value } from '../../messages/message.ts'
import { tellAll } from '../../messages/tell.ts'
import { prepared } from '../../queries/prepared.ts'
import type { Reading } from '../book/context.ts'

/** An answer in which every person that a message names by id has a name: the one they go by now. */
export function withNames<T>({ sqlite }: Reading, answer: T): T {
  const nameOf = prepared(sqlite, 'SELECT name FROM person WHERE id = ?').pluck()
  const named = (value: Value): Value => {
    if (typeof value !== 'object') return value
    if ('list' in value) return { ...value, list: value.list.map(named) }
    if (isMessage(value)) return inMessage(value)
    if (!('person' in value)) return value
    const name = nameOf.get(value.person) as string | undefined
    return name === undefined ? value : { ...value, name }
  }
  const inMessage = ({ id, values }: Message): Message => ({
    id,
    values: Object.fromEntries(Object.entries(values).map(([name, value]) => [name, named(value)])),
  })
  return tellAll(answer, inMessage) as T
}
