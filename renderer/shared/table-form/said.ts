import type { Message } from '../../../db/messages/message.ts'
import type { Texts } from '../../../db/messages/texts.ts'

/** The text of something that may be told by a message, or a text already. */
export function saidBy({ say }: Pick<Texts, 'say'>, told: Message | string): string {
  return typeof told === 'string' ? told : say(told)
}
