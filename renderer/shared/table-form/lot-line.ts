import type { Texts } from '../../../db/messages/texts.ts'
import { amountProblem } from '../format/manner.ts'

/** A lot as it was picked for a line; what is left of it is read afresh wherever it is shown. */
export interface PickedLot {
  readonly lotId: number
  readonly lotNumber: string
  readonly variety: string
  /** Why this lot is offered before others of its variety. Missing in a paper sheet that an earlier version kept. */
  readonly why?: string
}

/** A lot and how much of it goes out, as it is typed. */
export interface LotLine {
  readonly id: string
  /** The lot's text as typed, or its name once it is picked. */
  readonly text: string
  readonly lot: PickedLot | null
  readonly amount: string
}

/** What of an offer, or of a scanned lot's record, makes a line. */
export type PickedFrom = PickedLot & { readonly packetSeeds: number | null }

export function emptyLotLine(id: string): LotLine {
  return { id, text: '', lot: null, amount: '' }
}

/** Whether neither a lot nor an amount was typed. */
export function isUntouchedLot(line: LotLine): boolean {
  return line.text.trim() === '' && line.amount.trim() === ''
}

/** A line of a picked lot. One packet of the crop's usual size, unless an amount was typed before the lot. */
export function withLot(
  typed: Pick<LotLine, 'lot' | 'amount'>,
  { lotId, lotNumber, variety, why = '', packetSeeds }: PickedFrom,
  t: Texts['text'],
): Omit<LotLine, 'id'> {
  const usual = packetSeeds === null ? '' : t('table.one-packet', { seeds: packetSeeds })
  const typedBefore = typed.lot === null && typed.amount.trim() !== ''
  return {
    text: `${variety}, ${lotNumber}`,
    lot: { lotId, lotNumber, variety, why },
    amount: typedBefore ? typed.amount : usual,
  }
}

/** A line whose lot is known and whose amount can be read, as it can be previewed. */
export function canBePreviewed<L extends LotLine>(line: L): line is L & { readonly lot: PickedLot } {
  return line.lot !== null && amountProblem(line.amount) === undefined
}
