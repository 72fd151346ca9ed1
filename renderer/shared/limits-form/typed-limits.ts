import type { GiftLimits } from '../../../db/domain/terms/gift-limits.ts'

/** The terms of a gift as they are typed: no end of an agreement is ''. */
export type TypedLimits = Omit<GiftLimits, 'agreementEnds'> & { readonly agreementEnds: string }

/** What can be refused of them. */
export const LIMIT_STEPS = ['agreement', 'agreementEnds', 'communityLabel', 'communityLink'] as const
export type LimitStep = (typeof LIMIT_STEPS)[number]

export function typedLimits({ agreementEnds, ...limits }: GiftLimits): TypedLimits {
  return { ...limits, agreementEnds: agreementEnds ?? '' }
}

/** The terms as the collection takes them. */
export function limitsOf({ agreementEnds, ...typed }: TypedLimits): GiftLimits {
  return { ...typed, agreementEnds: agreementEnds === '' ? null : agreementEnds }
}
