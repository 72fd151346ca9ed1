import type { GrowOutLine } from '../../../db/contract/regeneration-operations.ts'

type Kind = GrowOutLine['next'][number]

/** What a note says, as its button has it. */
export const NOTE_WORDS: Readonly<Record<Kind, string>> = {
  sown: 'Sown',
  emerged: 'Came up',
  'roots-stored': 'Roots stored',
  'planted-out': 'Roots planted again',
  flowered: 'In flower',
  'saved-from': 'Seed saved',
  failed: 'Failed',
}

/** How a grow-out stands, in the keeper's words. */
export const GROW_OUT_WORDS: Readonly<Record<GrowOutLine['state'], string>> = {
  planned: 'planned, no seed out yet',
  'seed-out': 'seed is out',
  growing: 'growing',
  failed: 'failed',
  'brought-back': 'seed came back',
  'not-heard-of': 'nothing was heard of it',
}

/** The address of the season's notes, or of one grow-out's. */
export function seasonNotesAddress(growOutId?: number): string {
  return growOutId === undefined ? '/regrow/season' : `/regrow/season/${growOutId}`
}
