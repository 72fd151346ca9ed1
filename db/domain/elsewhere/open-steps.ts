import { addYears } from '../dates/day-arithmetic.ts'
import type { IsoDate } from '../dates/iso-date.ts'

/** What of a hand-out to an institution may still be open. */
export const INSTITUTION_STEPS = ['agreement', 'sending', 'report'] as const
export type InstitutionStep = (typeof INSTITUTION_STEPS)[number]

/** So many years after it was sent something is expected back. Common practice, no source. */
export const REPORT_AFTER_YEARS = 1

export interface InstitutionFacts {
  /** Which agreement was signed; empty: none yet. */
  readonly agreement: string
  readonly sentOn: IsoDate | null
  /** How often they reported back. */
  readonly reports: number
}

/**
 * What is open of a hand-out to an institution on a day.
 *
 * Agreements, and papers of plant health where the receiving country asks for them, go with distributed seed: FAO Genebank
 * Standards 2014, 4.8.1 and 4.8.2 (from memory). Telling what came of it is a duty under the treaty's Standard Material
 * Transfer Agreement, article 6.9 (from memory), and courtesy elsewhere; after how long is ours. Which papers a border asks
 * for is local law (certificates: IPPC, ISPM 12, section 1; seen in its table of contents), so that none is ever open.
 */
export function openSteps(
  { agreement, sentOn, reports }: InstitutionFacts,
  today: IsoDate,
): InstitutionStep[] {
  const open: InstitutionStep[] = []
  if (agreement === '') open.push('agreement')
  if (sentOn === null) open.push('sending')
  else if (reports === 0 && addYears(sentOn, REPORT_AFTER_YEARS) <= today) open.push('report')
  return open
}
