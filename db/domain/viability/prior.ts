import { normalQuantile } from './normal.ts'

/**
 * What is thought of a lot before its own tests: how alive it was at the start, as a normal equivalent deviate, and how many
 * times faster than reckoned it ages, as a natural logarithm. Independent; the pace is normal, the start is normal but for
 * {@link ODD_LOTS}.
 */
export interface ViabilityPrior {
  readonly startMean: number
  readonly startSd: number
  readonly logPaceMean: number
  readonly logPaceSd: number
}

/** What the pace of ageing is reckoned by. */
export type PaceBasis = 'constants-seen' | 'constants-from-memory' | 'rule-of-thumb'

/** What a prior is made from. */
export interface PriorFacts {
  /** The least part alive that the crop is usually let be sold with, 0 to 1. */
  readonly leastSold: number
  readonly basis: PaceBasis
  /** Whether moisture and climate were measured, or one of them is assumed. */
  readonly keepingMeasured: boolean
  /** Whether the constants are used outside what they were fitted on. */
  readonly extrapolates: boolean
}

/** One lot in ten is taken to start below the least that may be sold; lots differ by so much. Judgement, no source. */
const STARTS_BELOW = 0.1
const START_SD = 0.6
/**
 * The equation is known to promise too much: results of long storage were lower, often much lower (Solberg et al. 2020,
 * Front. Plant Sci. 11:1007, seen). No source gives a factor; half as fast again is judgement, with room on both sides.
 */
const OPTIMISM = 1.5
/** Standard deviations of the logarithm of the pace, added as independent: judgement, no source. */
const DOUBT: Readonly<Record<PaceBasis, number>> = {
  'constants-seen': 0.5,
  'constants-from-memory': 0.65,
  'rule-of-thumb': 0.8,
}
const DOUBT_OF_ASSUMED_KEEPING = 0.7
const DOUBT_OF_EXTRAPOLATION = 0.4

/** The middle one of the least parts that 7 CFR 201.31 lists, for crops that no law of sale names. */
const USUALLY_LEAST_SOLD = 0.75

/** The least part alive that a crop is let be sold with, 0 to 1, from the law's percent; null: no law names it. */
export function leastSold(percent: number | null): number {
  return percent === null ? USUALLY_LEAST_SOLD : percent / 100
}

/** The prior of a lot; the same object for the same facts. Throws RangeError unless `leastSold` is above 0 and below 1. */
export function priorOf(facts: PriorFacts): ViabilityPrior {
  const key = `${facts.leastSold} ${facts.basis} ${facts.keepingMeasured} ${facts.extrapolates}`
  const known = PRIORS.get(key) ?? makePrior(facts)
  PRIORS.set(key, known)
  return known
}

/** Few facts, many lots. */
const PRIORS = new Map<string, ViabilityPrior>()

function makePrior({ leastSold, basis, keepingMeasured, extrapolates }: PriorFacts): ViabilityPrior {
  return {
    startMean: normalQuantile(leastSold) - normalQuantile(STARTS_BELOW) * START_SD,
    startSd: START_SD,
    logPaceMean: basis === 'rule-of-thumb' ? 0 : Math.log(OPTIMISM),
    logPaceSd: Math.hypot(
      DOUBT[basis],
      keepingMeasured ? 0 : DOUBT_OF_ASSUMED_KEEPING,
      extrapolates ? DOUBT_OF_EXTRAPOLATION : 0,
    ),
  }
}

/** One lot in ten may have gone wrong in the field or in drying, and starts anywhere, mostly lower. Judgement, no source. */
export const ODD_LOTS = { share: 0.1, lower: 0.6, sd: 1.6 } as const

/** How likely a start is before any test, as a natural logarithm but for a constant. */
export function logPriorOfStart({ startMean, startSd }: ViabilityPrior, start: number): number {
  const usual = (start - startMean) / startSd
  const odd = (start - startMean + ODD_LOTS.lower) / ODD_LOTS.sd
  return Math.log(
    ((1 - ODD_LOTS.share) / startSd) * Math.exp(-0.5 * usual * usual) +
      (ODD_LOTS.share / ODD_LOTS.sd) * Math.exp(-0.5 * odd * odd),
  )
}

const DAYS_IN_YEAR = 365.25

/**
 * Days in which viability falls by one deviate where only the years that seed keeps are known: half of it is taken to be
 * alive when they are over, in the middle of their range. Judgement: no list says what its years mean.
 */
export function sigmaFromYears([low, high]: readonly [number, number], startMean: number): number {
  return (Math.sqrt(low * high) * DAYS_IN_YEAR) / Math.max(0.5, startMean)
}
