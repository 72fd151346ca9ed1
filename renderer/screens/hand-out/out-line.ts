import type { CallInput, Value } from '../../../db/contract/contract.ts'
import { amountProblem } from '../../shared/format/manner.ts'

/** A lot as it was picked for a line; what is left of it is read afresh wherever it is shown. */
export interface PickedLot {
  readonly lotId: number
  readonly lotNumber: string
  readonly variety: string
  readonly crop: string
  /** Why this lot is offered before others of its variety. */
  readonly why: string
}

/** One lot that goes out, as it is typed. */
export interface OutLine {
  readonly id: string
  /** The lot's text as typed, or its name once it is picked. */
  readonly text: string
  readonly lot: PickedLot | null
  readonly amount: string
}

export type OutField = 'lot' | 'amount'
export type OutProblems = Partial<Record<OutField, string>>

export type LotOffered = Value<'withdrawal.list-lots'>['lots'][number]
/** What of an offer, or of a scanned lot's record, makes a line. */
export type PickedFrom = Pick<LotOffered, 'lotId' | 'lotNumber' | 'variety' | 'crop' | 'why' | 'packetSeeds'>
type Line = CallInput<'withdrawal.record'>['lines'][number]

export function emptyOutLine(id: string): OutLine {
  return { id, text: '', lot: null, amount: '' }
}

/** Whether nothing was typed of a line. */
export function isUntouched(line: OutLine): boolean {
  return line.text.trim() === '' && line.amount.trim() === ''
}

/** A line of a picked lot. One packet of the crop's usual size, unless an amount was typed before the lot. */
export function withLot(
  typed: Pick<OutLine, 'lot' | 'amount'>,
  picked: PickedFrom,
): Pick<OutLine, 'text' | 'lot' | 'amount'> {
  const { lotId, lotNumber, variety, crop, why, packetSeeds } = picked
  const usual = packetSeeds === null ? '' : `1 packet of ${packetSeeds}`
  const typedBefore = typed.lot === null && typed.amount.trim() !== ''
  return {
    text: `${variety}, ${lotNumber}`,
    lot: { lotId, lotNumber, variety, crop, why },
    amount: typedBefore ? typed.amount : usual,
  }
}

/** What a line still lacks before it can be put on the visit's list, by field. */
export function outProblems(line: OutLine): OutProblems {
  if (line.lot === null) return { lot: lotProblem(line.text.trim()) }
  const amount = amountProblem(line.amount)
  return {
    ...(amount === undefined ? {} : { amount }),
  }
}

function lotProblem(typed: string): string {
  return typed === ''
    ? 'Which lot goes out? Scan its label, or type its number or a few letters of its name.'
    : `Choose from the list which lot ‘${typed}’ is.`
}

/** The line as the collection takes it. Throws RangeError where no lot was picked. */
export function lineOf(line: OutLine): Line {
  if (line.lot === null) throw new RangeError('A line needs its lot')
  return { lotId: line.lot.lotId, amount: line.amount }
}

/** The line and its field that a problem's path names ('lines.0.amount'), or null for a path of another kind. */
export function outFieldOf(path: string | null): { readonly line: number; readonly field: OutField } | null {
  const parts = /^lines\.(\d+)(?:\.(\w+))?/.exec(path ?? '')
  if (!parts) return null
  return { line: Number(parts[1]), field: parts[2] === 'amount' ? 'amount' : 'lot' }
}
