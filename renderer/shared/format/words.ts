import type { LotRole } from '../../../db/contract/fields.ts'
import type { NeedState } from '../../../db/domain/needs/need.ts'

/** The words on screen for what the collection stores as codes. */
export const ROLE_WORDS: Record<LotRole, string> = {
  working: 'working stock',
  reserve: 'reserve',
  reference: 'reference sample',
  'duplicate-elsewhere': 'safety duplicate',
}

export const STATE_WORDS: Record<NeedState, string> = {
  rescue: 'rescue',
  regrow: 'regrow this season',
  watch: 'watch',
  'well-stocked': 'well stocked',
  'none-left': 'none left',
}

/** A sentence with its first letter large. */
export function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1)
}
