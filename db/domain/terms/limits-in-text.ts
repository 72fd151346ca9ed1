import { type Message, message } from '../../messages/message.ts'
import { SHARED_WITH } from '../shared/closed-sets.ts'
import { fold } from '../shared/fold.ts'
import { type GiftLimits, NO_LIMITS, sameLimits } from './gift-limits.ts'

/**
 * The limits that a text says in the very sentences in which lists and passports tell them, so that they hold where such a file
 * is read again; of several the strictest. Null: it says none. Who agreed to what stays a text.
 *
 * `tellers`: the languages in which they may stand.
 */
export function limitsInText(
  text: string,
  tellers: readonly ((told: Message) => string)[],
): GiftLimits | null {
  const folded = fold(text)
  const says = (told: Message) => tellers.some((tell) => folded.includes(fold(tell(told))))
  const limits: GiftLimits = {
    ...NO_LIMITS,
    share:
      SHARED_WITH.findLast((share) => share !== 'anyone' && says(message(`terms.share.${share}`))) ??
      'anyone',
    publishStory: !says(message('terms.story-unpublished')),
    publishName: !says(message('terms.name-unpublished')),
    mayBeSold: !says(message('terms.not-for-sale')),
  }
  return sameLimits(limits, NO_LIMITS) ? null : limits
}
