import { logGamma } from '../germination/incomplete-beta.ts'
import { probability } from '../shared/probability.ts'

/** Seed of one lot that is sown: how many, and the part of them that is alive, with its standard deviation. */
export interface SownSeed {
  readonly seeds: number
  readonly viability: number
  readonly deviation: number
}

/**
 * How sure an emergence is, as the concentration of a Beta distribution: 0.8 is then 0.7 to 0.9, nineteen times in twenty, the
 * range in which it is usually planned. From memory.
 */
const EMERGENCE_CONCENTRATION = 63
/** From this concentration on a part counts as certain, and what is left is the binomial. */
const CERTAIN = 1e7
/** More seeds than anybody keeps; the answer where even these would not be enough. */
const MOST_SEEDS = 100_000_000

/** Plants to expect of what is sown. `emergence` is the part of living seeds that become plants, 0 to 1. */
export function plantsExpected(sown: readonly SownSeed[], emergence: number): number {
  return sown.reduce((sum, { seeds, viability }) => sum + seeds * viability * emergence, 0)
}

/**
 * The chance, 0 to 1, that at least so many plants come up.
 *
 * Each seed is a plant by chance (binomial), by a part that is itself in doubt: how many are alive, and how many of those
 * emerge. Together that is a beta-binomial with the mean and the deviation of the two. Lots that are sown together are taken to
 * be wrong together, as parts of one harvest are, so that splitting a lot changes nothing.
 */
export function chanceOfPlants(plants: number, sown: readonly SownSeed[], emergence: number): number {
  const seeds = sown.reduce((sum, lot) => sum + lot.seeds, 0)
  if (plants <= 0) return 1
  if (seeds < plants) return 0
  const part = plantsExpected(sown, emergence) / seeds
  if (part <= 0) return 0
  if (part >= 1) return 1
  const alive = part / emergence
  const doubtOfLife = sown.reduce((sum, lot) => sum + lot.seeds * lot.deviation, 0) / seeds
  const doubtOfEmergence = Math.sqrt((emergence * (1 - emergence)) / (EMERGENCE_CONCENTRATION + 1))
  const variance =
    (emergence * doubtOfLife) ** 2 + (alive * doubtOfEmergence) ** 2 + (doubtOfLife * doubtOfEmergence) ** 2
  const concentration = Math.min(CERTAIN, Math.max(0.01, (part * (1 - part)) / variance - 1))
  return probability(1 - betaBinomialBelow(plants, seeds, part * concentration, (1 - part) * concentration))
}

/** The chance of fewer than `hits` in `trials`, where the part is distributed as Beta(a, b). */
function betaBinomialBelow(hits: number, trials: number, a: number, b: number): number {
  let log = logGamma(b + trials) - logGamma(b) + logGamma(a + b) - logGamma(a + b + trials)
  let sum = 0
  for (let hit = 0; hit < hits; hit += 1) {
    sum += Math.exp(log)
    log += Math.log(((trials - hit) * (a + hit)) / ((hit + 1) * (b + trials - hit - 1)))
  }
  return sum
}

/** The least whole number from `low` up to `most` for which something holds that goes on holding; null where it never does. */
export function leastThat(holds: (count: number) => boolean, low: number, most: number): number | null {
  if (!holds(most)) return null
  let [below, enough] = [low - 1, most]
  while (enough - below > 1) {
    const middle = Math.floor((below + enough) / 2)
    if (holds(middle)) enough = middle
    else below = middle
  }
  return enough
}

const counted = new Map<string, number>()

/** Living seeds from which so many plants come up with the chance asked, 0.5 to 0.99; `emergence` above 0, at most 1. */
export function livingSeedsFor(plants: number, emergence: number, assurance: number): number {
  const key = `${plants} ${emergence} ${assurance}`
  const known = counted.get(key)
  if (known !== undefined) return known
  const isSure = (count: number) =>
    chanceOfPlants(plants, [{ seeds: count, viability: 1, deviation: 0 }], emergence) >= assurance
  const seeds = leastThat(isSure, plants, MOST_SEEDS) ?? MOST_SEEDS
  counted.set(key, seeds)
  return seeds
}

/** A chance as a keeper would say it, so many times in 100: never none nor all. */
export function timesIn100(chance: number): number {
  return Math.min(99, Math.max(1, Math.round(100 * chance)))
}
