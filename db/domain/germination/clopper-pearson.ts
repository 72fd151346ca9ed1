import { betaQuantile } from './incomplete-beta.ts'

const TAIL = 0.025

/**
 * Clopper and Pearson's exact 95 % interval for the part of seeds that sprout, `sprouted` of `tested`.
 *
 * Beta quantiles B(0.025; x, n - x + 1) and B(0.975; x + 1, n - x), 0 and 1 at the ends (Clopper & Pearson 1934,
 * Biometrika 26:404-413, from memory). Never covers the truth less often than it says, so it is wider than Wilson's.
 * Throws RangeError unless both are whole numbers, 0 <= sprouted <= tested and tested >= 1.
 */
export function clopperPearsonInterval(
  sprouted: number,
  tested: number,
): readonly [low: number, high: number] {
  const whole = Number.isSafeInteger(sprouted) && Number.isSafeInteger(tested)
  if (!whole || tested < 1 || sprouted < 0 || sprouted > tested) {
    throw new RangeError(`Not a germination result: ${sprouted} of ${tested}`)
  }
  return [
    sprouted === 0 ? 0 : betaQuantile(TAIL, sprouted, tested - sprouted + 1),
    sprouted === tested ? 1 : betaQuantile(1 - TAIL, sprouted + 1, tested - sprouted),
  ]
}
