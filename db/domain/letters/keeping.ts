import { type Message, message } from '../../messages/message.ts'

/** What is done with a gift: handed out in part, set apart in quarantine, or kept without handing out. */
export type Keeping = 'shared' | 'apart' | 'kept'

/** What is done with the gifts of a letter, in sentences that are true of each of them. */
export function keepingTold(gifts: readonly Keeping[]): Message {
  const [first = 'kept', ...others] = [...new Set(gifts)]
  if (others.length === 0) return message(`letters.keeping-${first}`)
  return message(gifts.includes('shared') ? 'letters.keeping-mixed' : 'letters.keeping-none-shared')
}

/** What is done with one gift, where it is not shared. */
export function oneKept(keeping: Keeping): Message | null {
  return keeping === 'shared' ? null : message(`letters.one-${keeping}`)
}
