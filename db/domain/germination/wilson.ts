/** Standard deviations to either side of the middle that hold so much of a normal distribution. */
const DEVIATIONS = { 90: 1.644853626951472, 95: 1.959963984540054 } as const

/**
 * Wilson's interval for the part of seeds that sprout, `sprouted` of `tested`, held to 0 and 1: the 95 % one of germination
 * tests unless asked for the 90 % one, which is what forecasts and living seeds are told with.
 *
 * Wilson 1927; formula as in Newcombe 1998, Statistics in Medicine 17:857-872. Throws RangeError unless both are whole
 * numbers, 0 <= sprouted <= tested and tested >= 1.
 */
export function wilsonInterval(
  sprouted: number,
  tested: number,
  percent: keyof typeof DEVIATIONS = 95,
): readonly [low: number, high: number] {
  const whole = Number.isSafeInteger(sprouted) && Number.isSafeInteger(tested)
  if (!whole || tested < 1 || sprouted < 0 || sprouted > tested) {
    throw new RangeError(`Not a germination result: ${sprouted} of ${tested}`)
  }
  const part = sprouted / tested
  const z = DEVIATIONS[percent]
  const z2 = z * z
  const middle = part + z2 / (2 * tested)
  const half = z * Math.sqrt((part * (1 - part)) / tested + z2 / (4 * tested * tested))
  const scale = 1 + z2 / tested
  const low = sprouted === 0 ? 0 : Math.max(0, (middle - half) / scale)
  const high = sprouted === tested ? 1 : Math.min(1, (middle + half) / scale)
  return [low, high]
}
