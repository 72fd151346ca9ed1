import { readNumber } from '../../../db/domain/amounts/read-number.ts'

/** A whole number as typed, grouped or not; null for anything else. */
export function wholeNumber(typed: string): number | null {
  const plain = typed.trim().replace(/[\s'’]/g, '')
  return /^\d{1,9}$/.test(plain) ? Number(plain) : null
}

/** A number as typed, with or without a percent sign, where it lies within two bounds; null for anything else. */
export function numberWithin(typed: string, least: number, most: number): number | null {
  const read = readNumber(typed.replace('%', ''))
  return read.kind === 'number' && read.value >= least && read.value <= most ? read.value : null
}
