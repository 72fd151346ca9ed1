import { probability } from '../shared/probability.ts'
import type { Posterior } from './learner.ts'
import { normalBelow, normalQuantile } from './normal.ts'

/** A figure with its doubt: 5, 50 and 95 of a hundred lie below the three, so that low to high is a 90 % band. */
export interface Band {
  readonly low: number
  readonly middle: number
  readonly high: number
}

/**
 * What seed must not fall below: a part alive, or that part of what was alive at the lot's start (the two readings of the
 * genebanks' 85 %: IBPGR 1985, and FAO 2014 with Handbook 8). `part` is 0.05 to 1.
 */
export interface Threshold {
  readonly part: number
  readonly of: 'all-seeds' | 'the-start'
}

/** Cells that weigh less are passed over: together they are less than a thousandth. */
const NEGLIGIBLE = 1e-7

const QUANTILES = [0.05, 0.5, 0.95] as const

/** The share of a lot alive after it aged by so many computed deviates. */
export function viabilityBand({ starts, paces, weights }: Posterior, lost: number): Band {
  const bins = new Bins(-8, 8, 800)
  const step = stepOf(starts)
  for (let i = 0; i < starts.length; i += 1) {
    const start = starts[i] as number
    for (let j = 0; j < paces.length; j += 1) {
      const weight = weights[i * paces.length + j] as number
      if (weight < NEGLIGIBLE) continue
      const deviate = start + step * spread(j) - (paces[j] as number) * lost
      bins.add(deviate, weight)
    }
  }
  return bins.band(normalBelow)
}

/** A lot that starts below its threshold has crossed before it aged at all: as little as this. */
const AT_ONCE = -14

/** By how many computed deviates a lot has aged when it crosses a threshold; 0 where it starts below. */
export function crossingBand({ starts, paces, weights }: Posterior, threshold: Threshold): Band {
  const bins = new Bins(AT_ONCE, 14, 1400)
  const step = stepOf(starts)
  for (let i = 0; i < starts.length; i += 1) {
    const start = starts[i] as number
    const room = start - deviateOf(threshold, start)
    for (let j = 0; j < paces.length; j += 1) {
      const weight = weights[i * paces.length + j] as number
      if (weight < NEGLIGIBLE) continue
      const left = room + step * spread(j)
      const logLost = left > 0 ? Math.log(left / (paces[j] as number)) : AT_ONCE
      bins.add(logLost, weight)
    }
  }
  return bins.band((logLost) => (logLost < AT_ONCE + 1 ? 0 : Math.exp(logLost)))
}

/** The pace that is as likely too high as too low, times the computed one. */
export function middlePace({ starts, paces, weights }: Posterior): number {
  let below = 0
  for (let j = 0; j < paces.length; j += 1) {
    for (let i = 0; i < starts.length; i += 1) below += weights[i * paces.length + j] as number
    if (below >= 0.5) return paces[j] as number
  }
  return paces.at(-1) as number
}

/** The chance that a lot aged by so much is below its threshold, 0 to 1. */
export function chanceBelow(
  { starts, paces, weights }: Posterior,
  threshold: Threshold,
  lost: number,
): number {
  let chance = 0
  const step = stepOf(starts)
  for (let i = 0; i < starts.length; i += 1) {
    const start = starts[i] as number
    const wanted = deviateOf(threshold, start)
    for (let j = 0; j < paces.length; j += 1) {
      if (start + step * spread(j) - (paces[j] as number) * lost < wanted)
        chance += weights[i * paces.length + j] as number
    }
  }
  return probability(chance)
}

function stepOf(starts: Float64Array): number {
  return (starts[1] as number) - (starts[0] as number)
}

/** A cell of the grid stands for all starts half a step either way: its neighbours are spread evenly over them. */
function spread(j: number): number {
  return ((j * 0.618_033_988_749_895) % 1) - 0.5
}

/** A threshold of all seeds would be infinite as a deviate at one; nobody means more than this. */
const NEARLY_ALL = 0.9999

function deviateOf({ part, of }: Threshold, start: number): number {
  return normalQuantile(Math.min(NEARLY_ALL, of === 'all-seeds' ? part : part * normalBelow(start)))
}

/** Weights sorted into even bins: quantiles of many weighted figures without sorting them. */
class Bins {
  readonly #from: number
  readonly #width: number
  readonly #weights: Float64Array

  constructor(from: number, to: number, count: number) {
    this.#from = from
    this.#width = (to - from) / count
    this.#weights = new Float64Array(count)
  }

  add(figure: number, weight: number): void {
    const bin = Math.floor((figure - this.#from) / this.#width)
    const inside = Math.min(Math.max(bin, 0), this.#weights.length - 1)
    this.#weights[inside] = (this.#weights[inside] as number) + weight
  }

  band(shown: (figure: number) => number): Band {
    const [low, middle, high] = QUANTILES.map((part) => shown(this.#quantile(part)))
    if (low === undefined || middle === undefined || high === undefined)
      throw new Error('A band has three figures')
    return { low, middle, high }
  }

  #quantile(part: number): number {
    let below = 0
    for (let bin = 0; bin < this.#weights.length; bin += 1) {
      const here = this.#weights[bin] as number
      if (below + here >= part) return this.#from + (bin + (part - below) / here) * this.#width
      below += here
    }
    return this.#from + this.#weights.length * this.#width
  }
}
