import { decimalMark, type Manner } from '../../../db/domain/amounts/in-words.ts'
import { type AmountReading, readAmount } from '../../../db/domain/amounts/read-amount.ts'
import { readByMark } from '../../../db/domain/amounts/read-number.ts'
import { readSample, type SampleReading } from '../../../db/domain/weights/read-sample.ts'
import type { Message } from '../../../db/messages/message.ts'

export const UNTIL_TOLD: Manner = { locale: 'en-GB', massUnits: 'metric' }

/** How the open library writes, as its last answer about itself told. */
let manner = UNTIL_TOLD

export function noteManner({ locale, massUnits }: Manner): void {
  manner = { locale, massUnits }
}

/** Reads an amount as the library writes it; how many seeds its packets hold is not known here. */
export function readTypedAmount(typed: string): AmountReading {
  return readAmount(typed, { packetSeeds: null, decimalMark: decimalMark(manner) })
}

/** A number as the library writes it, with comma or point; null for what is none. */
export function readTypedNumber(typed: string): number | null {
  return readByMark(typed, decimalMark(manner))
}

/** A sample as the library writes it. */
export function readTypedSample(typed: string): SampleReading {
  return readSample(typed, decimalMark(manner))
}

/** What is wrong with a typed amount as it stands, or undefined. */
export function amountProblem(typed: string): Message | undefined {
  const reading = readTypedAmount(typed)
  if (reading.kind === 'unreadable') return reading.because
  return reading.kind === 'ask' ? reading.question : undefined
}
