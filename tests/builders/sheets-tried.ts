import { ShippedSheet } from '../../db/contract/print-operations.ts'
import { sized } from '../support/sized.ts'

/** The sheets that are printed and read back: three that differ most in every run, all that are shipped in the long one. */
export const SHEETS_TRIED: readonly ShippedSheet[] = sized(
  ['a4-21', 'letter-80', 'coin-1'],
  ShippedSheet.options,
)
