import { refuse } from '../../contract/refusal.ts'
import type { Writing } from './context.ts'

/** Refuses what is odd but possible, unless the keeper was asked about it before and sends it again. */
export function askOnce({ itIsSo }: Writing, asks: string, sentence: string, field: string | null): void {
  if (itIsSo.includes(asks)) return
  refuse('odd-but-possible', sentence, { field, asks, todo: 'If it is right, save once more.' })
}
