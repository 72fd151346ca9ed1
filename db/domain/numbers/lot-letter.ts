/** Letters for lots, without I and O, which are read as 1 and 0 (common practice, no source). */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/** The letter of the n-th lot of an accession, from 1: A to Z, then AA. Throws RangeError below 1. */
export function lotLetter(ordinal: number): string {
  if (!Number.isSafeInteger(ordinal) || ordinal < 1)
    throw new RangeError(`Lots are counted from 1: ${ordinal}`)
  const rest = ordinal - 1
  const last = LETTERS.charAt(rest % LETTERS.length)
  return rest < LETTERS.length ? last : lotLetter(Math.floor(rest / LETTERS.length)) + last
}
