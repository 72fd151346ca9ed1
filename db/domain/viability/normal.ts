import { probability } from '../shared/probability.ts'

const ROOT_TWO_PI = Math.sqrt(2 * Math.PI)
/** Beyond so many standard deviations the series loses digits and the continued fraction has them. */
const SERIES_TO = 5

/** The density of the standard normal distribution at x. */
export function normalDensity(x: number): number {
  return Math.exp(-0.5 * x * x) / ROOT_TWO_PI
}

/**
 * The part of a standard normal distribution below x, 0 to 1.
 *
 * Near the middle the series 1/2 + density (x + x^3/3 + x^5/15 + ...), in the tails the continued fraction of Mills' ratio
 * (Abramowitz and Stegun 26.2.11 and 26.2.14, both from memory; held against a statistics library in the tests).
 */
export function normalBelow(x: number): number {
  if (Number.isNaN(x)) throw new RangeError('Not a number of standard deviations')
  if (x > SERIES_TO) return 1 - tail(x)
  if (x < -SERIES_TO) return tail(-x)
  let term = x
  let sum = x
  for (let odd = 3; Math.abs(term) > 1e-17 * Math.abs(sum); odd += 2) {
    term *= (x * x) / odd
    sum += term
  }
  return probability(0.5 + normalDensity(x) * sum)
}

function tail(x: number): number {
  if (x > 38) return 0
  let ratio = x
  for (let step = 60; step >= 1; step -= 1) ratio = x + step / ratio
  return normalDensity(x) / ratio
}

/** The smallest part that has a quantile of its own: the density further out is no longer told from nothing. */
const SMALLEST_PART = 1e-300

/**
 * The number of standard deviations below which a part of a standard normal distribution lies: the normal equivalent
 * deviate of a fraction.
 *
 * A rational guess (Abramowitz and Stegun 26.2.22, from memory) made exact by Newton's steps. Throws RangeError unless the
 * part is above 0 and below 1.
 */
export function normalQuantile(part: number): number {
  if (!(part > 0 && part < 1)) throw new RangeError(`Not a part of a distribution: ${part}`)
  if (part > 0.5) return -normalQuantile(1 - part)
  const told = Math.max(part, SMALLEST_PART)
  const t = Math.sqrt(-2 * Math.log(told))
  let x = -(t - (2.30753 + 0.27061 * t) / (1 + 0.99229 * t + 0.04481 * t * t))
  for (let step = 0; step < 6; step += 1) {
    const off = (normalBelow(x) - told) / normalDensity(x)
    x -= off / (1 + (off * x) / 2)
  }
  return x
}
