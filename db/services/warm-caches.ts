import type { Reading } from './book/context.ts'
import { dueDays } from './germination/germination-advice.ts'
import { judgements } from './regrow/judgements.ts'

/** So many accessions at a time take some hundredths of a second. */
const ACCESSIONS_AT_A_TIME = 500

/**
 * Computes some of what a screen will ask of every accession, so that no screen waits for all of it.
 *
 * Tells how many accessions are left to compute. Only for a collection that is open for writing.
 */
export function warmCaches(reading: Reading): number {
  return judgements.ahead(reading, ACCESSIONS_AT_A_TIME) + dueDays.ahead(reading, ACCESSIONS_AT_A_TIME)
}
