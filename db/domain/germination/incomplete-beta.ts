import { probability } from '../shared/probability.ts'

/** Lanczos' coefficients for g = 7, nine terms: about fifteen digits (Godfrey's set, from memory; checked in tests). */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
] as const
const TINY = 1e-300
const MOST_STEPS = 10_000

/** The natural logarithm of the gamma function, for x > 0. */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new RangeError(`The logarithm of the gamma function is wanted at ${x}`)
  if (x < 0.5) return logGamma(x + 1) - Math.log(x)
  const shifted = x - 1
  const base = shifted + LANCZOS.length - 1.5
  const sum = LANCZOS.slice(1).reduce<number>(
    (total, c, index) => total + c / (shifted + index + 1),
    LANCZOS[0],
  )
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(base) - base + Math.log(sum)
}

/**
 * The regularised incomplete beta function I_x(a, b): the chance that a Beta(a, b) quantity is at most x.
 *
 * The continued fraction of the Digital Library of Mathematical Functions, 8.17.22, by Lentz' method (both from memory).
 * Throws RangeError unless a > 0, b > 0 and 0 <= x <= 1.
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (!(a > 0 && b > 0 && x >= 0 && x <= 1)) throw new RangeError(`No incomplete beta at ${x} for ${a}, ${b}`)
  if (x === 0 || x === 1) return x
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a)
  const front = Math.exp(
    logGamma(a + b) - logGamma(a + 1) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x),
  )
  return probability(front * continuedFraction(x, a, b))
}

function continuedFraction(x: number, a: number, b: number): number {
  const away = (value: number) => (Math.abs(value) < TINY ? TINY : value)
  let c = 1
  let d = 1 / away(1 - ((a + b) * x) / (a + 1))
  let value = d
  for (let m = 1; m <= MOST_STEPS; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    d = 1 / away(1 + even * d)
    c = away(1 + even / c)
    value *= d * c
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
    d = 1 / away(1 + odd * d)
    c = away(1 + odd / c)
    value *= d * c
    if (Math.abs(d * c - 1) < 1e-15) return value
  }
  throw new RangeError(`The incomplete beta function at ${x} for ${a}, ${b} does not settle`)
}

/**
 * The quantile of a Beta(a, b) distribution: the x below which a part `chance` of it lies.
 *
 * By halving, to the last digit: the function rises, so halving cannot miss. Throws RangeError unless 0 <= chance <= 1.
 */
export function betaQuantile(chance: number, a: number, b: number): number {
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`Not a part of a distribution: ${chance}`)
  let low = 0
  let high = 1
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2
    if (incompleteBeta(middle, a, b) < chance) low = middle
    else high = middle
  }
  return (low + high) / 2
}
