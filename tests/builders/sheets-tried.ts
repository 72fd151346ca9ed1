import { ShippedSheet } from '../../db/contract/paper-operations.ts'
import { sized } from '../support/sized.ts'

/** The sheets that are printed and read back: one of each make in every run, all that are shipped in the long one. */
export const SHEETS_TRIED: readonly ShippedSheet[] = sized(
  ['a4-21', 'letter-30', 'letter-80', 'packet-letter', 'coin-1', 'iso-c6'],
  ShippedSheet.options,
)
