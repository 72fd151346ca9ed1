import { type Message, message } from '../../messages/message.ts'
import type { SharedWith, WithdrawalPurpose } from '../shared/closed-sets.ts'

/** What the giver of seed wants done and not done with it, beside their own words. */
export interface GiftLimits {
  readonly share: SharedWith
  readonly publishStory: boolean
  readonly publishName: boolean
  readonly mayBeSold: boolean
  /** The authority or the agreement that this rests on, in words; empty: none. */
  readonly agreement: string
  /** The last day of the agreement, YYYY-MM-DD; null: none was named. */
  readonly agreementEnds: string | null
  /** The text of a label that a community issued, and its address. */
  readonly communityLabel: string
  readonly communityLink: string
}

/** What holds where nobody said anything: no limits. */
export const NO_LIMITS: GiftLimits = {
  share: 'anyone',
  publishStory: true,
  publishName: true,
  mayBeSold: true,
  agreement: '',
  agreementEnds: null,
  communityLabel: '',
  communityLink: '',
}

/** Whether two terms are the same in all that they say. */
export function sameLimits(one: GiftLimits, other: GiftLimits): boolean {
  return (Object.keys(NO_LIMITS) as (keyof GiftLimits)[]).every((name) => one[name] === other[name])
}

/** Whether a text is an address of the web, http or https: on the screen and on paper it is shown as text. */
export function isWebAddress(text: string): boolean {
  return /^https?:\/\/[^\s/?#]+\S*$/i.test(text)
}

/** Whether the agreement was over before a day. */
export function hasEnded({ agreementEnds }: Pick<GiftLimits, 'agreementEnds'>, today: string): boolean {
  return agreementEnds !== null && agreementEnds < today
}

/** Why giving seed out wants a reason, or what forbids it. */
export const LIMITS_ON_GIVING = ['community-only', 'ask-first', 'kept-by-us', 'agreement-ended'] as const
export type LimitOnGiving = (typeof LIMITS_ON_GIVING)[number]

/** Purposes for which seed stays the library's own although it leaves the drawer. */
const STAYS_OURS: ReadonlySet<WithdrawalPurpose> = new Set(['grow-out', 'safety-duplicate'])

/**
 * What the terms say of giving seed out for a purpose. Seed that nobody may have can still be grown for the library or kept
 * elsewhere for it.
 *
 * That a giver's conditions go with the seed is what gene banks agree to when they take material in (FAO Genebank Standards
 * 2014, 4.1 on acquisition and 4.8 on distribution, from memory); these four kinds, and what each asks, are common practice, no
 * source. Local rules decide.
 */
export function limitsOnGiving(
  limits: GiftLimits,
  purpose: WithdrawalPurpose,
  today: string,
): { readonly isRefused: boolean; readonly cautions: readonly LimitOnGiving[] } {
  const ended: LimitOnGiving[] = hasEnded(limits, today) ? ['agreement-ended'] : []
  switch (limits.share) {
    case 'anyone':
      return { isRefused: false, cautions: ended }
    case 'community':
      return { isRefused: false, cautions: ['community-only', ...ended] }
    case 'ask-first':
      return { isRefused: false, cautions: ['ask-first', ...ended] }
    case 'nobody':
      return STAYS_OURS.has(purpose)
        ? { isRefused: false, cautions: ['kept-by-us', ...ended] }
        : { isRefused: true, cautions: ended }
  }
}

/** Whether a list that anybody may read can name the seed as to be had. */
export function mayBeOffered({ share }: Pick<GiftLimits, 'share'>): boolean {
  return share === 'anyone' || share === 'ask-first'
}

/** Who may have it, in two or three words as it stands in a list of cautions; null: anyone. */
export function shareName({ share }: Pick<GiftLimits, 'share'>): Message | null {
  return share === 'anyone' ? null : message(`terms.name.${share}`)
}

/** What whoever holds the seed must know, shortest first: a line each, for the smallest label. */
export function limitsInShort({ share, mayBeSold }: GiftLimits): Message[] {
  return [
    ...(share === 'anyone' ? [] : [message(`terms.share.${share}`)]),
    ...(mayBeSold ? [] : [message('terms.not-for-sale')]),
  ]
}

/**
 * A label that a community issued, as they wrote it, with its address.
 *
 * Only the community can apply and word its labels (Local Contexts, frequently asked questions, seen): the text is held as
 * typed, and no label is offered to choose.
 */
export function communityLabelTold({ communityLabel: label, communityLink: link }: GiftLimits): Message[] {
  if (label === '') return link === '' ? [] : [message('terms.label-at', { link })]
  return [
    link === '' ? message('terms.label', { label }) : message('terms.label-with-address', { label, link }),
  ]
}

/** The authority or the agreement that the terms rest on, and its end. */
export function agreementTold(limits: GiftLimits, today: string): Message[] {
  const { agreement: typed, agreementEnds } = limits
  if (agreementEnds === null) return typed === '' ? [] : [message('terms.agreement', { agreement: typed })]
  const told = {
    agreement: typed === '' ? message('terms.agreement-unnamed') : typed,
    ends: { day: agreementEnds },
  }
  return [message(hasEnded(limits, today) ? 'terms.agreement-over' : 'terms.agreement-until', told)]
}

/** What is not told of the gift to others, a line each. */
export function keptToOurselves({ publishStory, publishName }: GiftLimits): Message[] {
  return [
    ...(publishStory ? [] : [message('terms.story-unpublished')]),
    ...(publishName ? [] : [message('terms.name-unpublished')]),
  ]
}

/** All that holds, a line each, who may have it first; none: no limits. */
export function limitsTold(limits: GiftLimits, today: string): Message[] {
  return [
    ...limitsInShort(limits),
    ...keptToOurselves(limits),
    ...agreementTold(limits, today),
    ...communityLabelTold(limits),
  ]
}
