import { z } from 'zod'
import type { Message, MessageId } from '../messages/message.ts'

/** A text that is told to whoever asked, in their language. */
export const Told = z.string().brand<'told'>()
export type Told = z.infer<typeof Told>

/** What a value that does not fit is answered with: zod carries the id, and who asked is told the message at the door. */
export function says(id: Extract<MessageId, `fits.${string}`>): string {
  return id
}

/**
 * What a service gives where a caller reads a text: a message, which is told at the door.
 *
 * A text as it is stands for itself: what somebody typed, and in rooms that do not tell by messages yet whole sentences.
 */
export type Untold<T> = T extends Told
  ? Message | string
  : T extends object
    ? { [K in keyof T]: Untold<T[K]> }
    : T
