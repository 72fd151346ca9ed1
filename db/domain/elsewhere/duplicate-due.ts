import { addDays } from '../dates/day-arithmetic.ts'
import type { IsoDate } from '../dates/iso-date.ts'

/** What of a safety duplicate may be due. */
export const DUPLICATE_MATTERS = ['agreement-over', 'agreement-ends', 'look'] as const
export type DuplicateMatter = (typeof DUPLICATE_MATTERS)[number]

/** So many days before its end an agreement is told of: time for a letter and its answer. Common practice, no source. */
export const AGREEMENT_TOLD_DAYS = 90

export interface DuplicateDays {
  /** The last day of the agreement; null where it has none. */
  readonly agreementEnds: IsoDate | null
  readonly nextLook: IsoDate | null
}

/**
 * What is due of a safety duplicate on a day: its agreement is over or soon will be, or somebody should look at it.
 *
 * That a duplicate rests on a clear signed agreement: Crop Genebank Knowledge Base, Safety duplication strategies (seen).
 * That each is kept as well as the original, far from it and with what is known of it: FAO Genebank Standards 2014, 4.9.1
 * and 4.9.2 (from memory). An agreement that ends on a day holds on that day.
 */
export function duplicateDue({ agreementEnds, nextLook }: DuplicateDays, today: IsoDate): DuplicateMatter[] {
  const due: DuplicateMatter[] = []
  if (agreementEnds !== null && agreementEnds < today) due.push('agreement-over')
  else if (agreementEnds !== null && agreementEnds <= addDays(today, AGREEMENT_TOLD_DAYS))
    due.push('agreement-ends')
  if (nextLook !== null && nextLook <= today) due.push('look')
  return due
}
