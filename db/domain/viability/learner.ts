import { logNormalBelow } from './log-normal-table.ts'
import { logPriorOfStart, ODD_LOTS, type ViabilityPrior } from './prior.ts'

/** A germination test of a lot, placed by how much the lot had aged: deviates lost by the computed pace up to that day. */
export interface PlacedTest {
  readonly lost: number
  readonly tested: number
  readonly sprouted: number
}

/**
 * What is thought of a lot: a grid over its start (deviates) and its pace (times the computed one) with a weight for each
 * pair, the weights adding up to 1. `weights[i * paces.length + j]` belongs to `starts[i]` and `paces[j]`.
 */
export interface Posterior {
  readonly starts: Float64Array
  readonly paces: Float64Array
  readonly weights: Float64Array
}

const COARSE = 23
const FINE = 31
/** A grid reaches so many standard deviations to either side, and the fine one where weights are above this part of the top. */
const REACH = 4.5
const WORTH_A_LOOK = -10
/** More seeds than these in a lot's tests are looked at thrice. */
const FEW_SEEDS = 100

interface Window {
  readonly startFrom: number
  readonly startTo: number
  readonly paceFrom: number
  readonly paceTo: number
}

/**
 * Learns a lot's start and pace from its tests: Bayes' rule on a grid, tests as binomial counts.
 *
 * Twice: on a coarse grid over all that the prior holds possible, then on a fine one where anything is left. `temper`, above
 * 0 and at most 1, lets the tests say less than they would where they disagree.
 */
export function learn(prior: ViabilityPrior, tests: readonly PlacedTest[], temper = 1): Posterior {
  if (tests.length > 0) return learnAfresh(prior, tests, temper)
  const known = UNTESTED.get(prior) ?? learnAfresh(prior, tests, temper)
  UNTESTED.set(prior, known)
  return known
}

/** What is thought of untested lots: the same for all that have one prior. */
const UNTESTED = new WeakMap<ViabilityPrior, Posterior>()

function learnAfresh(prior: ViabilityPrior, tests: readonly PlacedTest[], temper: number): Posterior {
  const startReach = REACH * ODD_LOTS.sd
  const paceReach = REACH * prior.logPaceSd
  const whole: Window = {
    startFrom: prior.startMean - ODD_LOTS.lower - startReach,
    startTo: prior.startMean - ODD_LOTS.lower + startReach,
    paceFrom: prior.logPaceMean - paceReach,
    paceTo: prior.logPaceMean + paceReach,
  }
  const seeds = tests.reduce((sum, { tested }) => sum + tested, 0)
  // Many seeds leave a ridge too narrow for the coarse grid: it is first looked for as if there were few.
  const near =
    seeds <= FEW_SEEDS
      ? whole
      : narrowed(weigh(prior, tests, (temper * FEW_SEEDS) / seeds, whole, COARSE), whole)
  const fine = narrowed(weigh(prior, tests, temper, near, COARSE), near)
  return normalised(weigh(prior, tests, temper, fine, FINE))
}

/** A grid of unnormalised logarithms of weight. */
interface LogGrid {
  readonly starts: Float64Array
  readonly logPaces: Float64Array
  readonly logWeights: Float64Array
  readonly top: number
}

function weigh(
  prior: ViabilityPrior,
  tests: readonly PlacedTest[],
  temper: number,
  { startFrom, startTo, paceFrom, paceTo }: Window,
  size: number,
): LogGrid {
  const starts = new Float64Array(size)
  const logPaces = new Float64Array(size)
  const paces = new Float64Array(size)
  for (let step = 0; step < size; step += 1) {
    starts[step] = startFrom + ((startTo - startFrom) * step) / (size - 1)
    logPaces[step] = paceFrom + ((paceTo - paceFrom) * step) / (size - 1)
    paces[step] = Math.exp(logPaces[step] as number)
  }
  const logWeights = new Float64Array(size * size)
  let top = Number.NEGATIVE_INFINITY
  for (let i = 0; i < size; i += 1) {
    const start = starts[i] as number
    const ofStart = logPriorOfStart(prior, start)
    for (let j = 0; j < size; j += 1) {
      let sum = 0
      for (const { lost, tested, sprouted } of tests) {
        const deviate = start - (paces[j] as number) * lost
        if (sprouted > 0) sum += sprouted * logNormalBelow(deviate)
        if (sprouted < tested) sum += (tested - sprouted) * logNormalBelow(-deviate)
      }
      const off = ((logPaces[j] as number) - prior.logPaceMean) / prior.logPaceSd
      const weight = ofStart - 0.5 * off * off + temper * sum
      logWeights[i * size + j] = weight
      if (weight > top) top = weight
    }
  }
  return { starts, logPaces, logWeights, top }
}

/** The part of a window, one step wider, where a coarse grid has weights worth a look. */
function narrowed({ logWeights, top }: LogGrid, whole: Window): Window {
  let [low, high, left, right] = [COARSE, 0, COARSE, 0]
  for (let i = 0; i < COARSE; i += 1) {
    for (let j = 0; j < COARSE; j += 1) {
      if ((logWeights[i * COARSE + j] as number) < top + WORTH_A_LOOK) continue
      if (i < low) low = i
      if (i > high) high = i
      if (j < left) left = j
      if (j > right) right = j
    }
  }
  const startAt = (step: number) =>
    whole.startFrom + ((whole.startTo - whole.startFrom) * step) / (COARSE - 1)
  const paceAt = (step: number) => whole.paceFrom + ((whole.paceTo - whole.paceFrom) * step) / (COARSE - 1)
  return {
    startFrom: startAt(low - 1),
    startTo: startAt(high + 1),
    paceFrom: paceAt(left - 1),
    paceTo: paceAt(right + 1),
  }
}

function normalised({ starts, logPaces, logWeights, top }: LogGrid): Posterior {
  const weights = logWeights.map((weight) => Math.exp(weight - top))
  let sum = 0
  for (const weight of weights) sum += weight
  for (let cell = 0; cell < weights.length; cell += 1) weights[cell] = (weights[cell] as number) / sum
  return { starts, paces: logPaces.map(Math.exp), weights }
}
