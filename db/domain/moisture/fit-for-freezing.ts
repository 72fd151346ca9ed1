/**
 * The moisture up to which seed goes into a freezer, percent of fresh weight. 5 to 8 % is common practice for home freezers;
 * genebanks dry further (FAO Genebank Standards 2014, 4.2.1 and 4.2.3, seen as taught by the Open University).
 */
export const FREEZES_SAFELY_TO = 8

export type FreezingAdvice = 'dry-enough' | 'too-moist' | 'not-known'

/** Whether seed may be frozen, by the highest that its last measurement leaves possible; null where nothing was measured. */
export function freezingAdvice(highestPercent: number | null): FreezingAdvice {
  if (highestPercent === null) return 'not-known'
  return highestPercent <= FREEZES_SAFELY_TO ? 'dry-enough' : 'too-moist'
}
