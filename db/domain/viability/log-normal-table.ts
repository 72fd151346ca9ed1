import { normalBelow } from './normal.ts'

const REACH = 8
const STEPS_PER_UNIT = 128

/** The logarithm of the part below, at even steps from -8 to 8: a grid asks for it a hundred thousand times. */
const LOG_BELOW = Float64Array.from({ length: 2 * REACH * STEPS_PER_UNIT + 2 }, (_, step) =>
  Math.log(normalBelow(step / STEPS_PER_UNIT - REACH)),
)

/** The natural logarithm of the part of a standard normal distribution below x, to five digits; flat beyond 8 either way. */
export function logNormalBelow(x: number): number {
  const at = (Math.min(Math.max(x, -REACH), REACH) + REACH) * STEPS_PER_UNIT
  const step = Math.floor(at)
  const here = LOG_BELOW[step] as number
  return here + (at - step) * ((LOG_BELOW[step + 1] as number) - here)
}
