import { isMessage, type Message } from '../../messages/message.ts'

/** What an entry said, as the book keeps it: a message, or a text in entries of older versions. */
export function saidOf(stored: string): Message | string {
  if (!/^\{"id":.*\}$/s.test(stored)) return stored
  try {
    const read: unknown = JSON.parse(stored)
    return isMessage(read) ? read : stored
  } catch {
    return stored
  }
}
