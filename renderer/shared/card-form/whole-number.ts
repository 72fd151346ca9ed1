import { readTypedNumber } from '../format/manner.ts'

/** A whole number as typed, grouped or not; null for anything else. */
export function wholeNumber(typed: string): number | null {
  const plain = typed.trim().replace(/[\s'’]/g, '')
  return /^\d{1,9}$/.test(plain) ? Number(plain) : null
}

/** A number as typed, with or without a percent sign, where it lies within two bounds; null for anything else. */
export function numberWithin(typed: string, least: number, most: number): number | null {
  const read = readTypedNumber(typed.replace('%', ''))
  return read !== null && read >= least && read <= most ? read : null
}
