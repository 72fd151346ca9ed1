/**
 * A probability, held to 0 and 1: sums and series of binary fractions end a hair outside.
 *
 * Every function that makes one passes it through here, so that no caller has to. Throws RangeError for what is no number.
 */
export function probability(value: number): number {
  if (Number.isNaN(value)) throw new RangeError('Not a probability')
  return Math.min(1, Math.max(0, value))
}
