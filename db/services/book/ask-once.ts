import { refuse } from '../../contract/refusal.ts'
import { type Message, message } from '../../messages/message.ts'
import type { Writing } from './context.ts'

/** Refuses what is odd but possible, unless the keeper was asked about it before and sends it again. */
export function askOnce({ itIsSo }: Writing, asks: string, sentence: Message, field: string | null): void {
  if (itIsSo.includes(asks)) return
  refuse('odd-but-possible', sentence, { field, asks, todo: message('book.if-right') })
}
