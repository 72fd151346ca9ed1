import type { PrintKind } from '../../../db/contract/print-operations.ts'

/** What the tray holds, in the order in which it is listed. */
export const KINDS = ['label', 'letter', 'slip'] as const satisfies readonly PrintKind[]

export const KIND_NAMES: Record<PrintKind, string> = {
  label: 'Packet labels',
  letter: 'Thank-you letters',
  slip: 'Withdrawal slips',
}

/** How each kind comes into the tray. */
export const HOW_IT_COMES: Record<PrintKind, string> = {
  label: 'A label comes here by itself for every gift taken in and all seed brought back.',
  letter:
    'A letter comes here by itself for a donor who agreed to be written to when the gift is taken in; for gifts of a list, or of donors who agreed later, ask for them on the left.',
  slip: 'A slip comes here when it is asked for while handing out.',
}
